import type { SiteDocument, SiteFeature } from '../src/site/document.ts';
import { type Sketch, type Spot, sketchAt } from './sketch.ts';

const BASE_YEAR = 2027;

/** Weights and mean speeds by sector of 45 degrees from north: nor'westers, cold southerlies, sea air from the east. */
const WIND = [
  [9, 4.2],
  [13, 3.6],
  [12, 3.3],
  [7, 3.0],
  [14, 4.1],
  [11, 4.4],
  [9, 4.3],
  [25, 6.3],
] as const;
const CALM_SHARE = 0.05;
const totalWeight = WIND.reduce((sum, [weight]) => sum + weight, 0);

const TREES: readonly (readonly [tag: string, species: string, spot: Spot, rest?: object])[] = [
  ['N1', 'Juglans regia', [-22, -8]],
  ['N2', 'Juglans regia', [18, -16]],
  ['N3', 'Castanea sativa', [-4, 24]],
  ['N4', 'Corylus avellana', [-40, 12]],
  ['N5', 'Corylus avellana', [-40, 4]],
  ['F1', 'Malus domestica', [22, 20], { rootstock: 'MM106', heightM: 1.2 }],
  ['F2', 'Malus domestica', [32, 20], { rootstock: 'MM106', heightM: 1.2 }],
  ['F3', 'Pyrus communis', [22, 30], { rootstock: 'Quince A', heightM: 1.2 }],
  ['F4', 'Prunus domestica', [32, 30], { rootstock: 'St Julien A', heightM: 1.2 }],
  ['F5', 'Prunus armeniaca', [38, 4], { rootstock: 'St Julien A', heightM: 1.2 }],
  ['A1', 'Alnus cordata', [-8, -14], { plantedYear: 2027 }],
  ['A2', 'Caragana arborescens', [8, 2], { plantedYear: 2027 }],
];

function features({ line, area, point }: Sketch): SiteFeature[] {
  return [
    area(
      'field-river-terrace',
      [
        [-52, -46],
        [50, -48],
        [54, 44],
        [-50, 48],
      ],
      { kind: 'field', name: 'River Terrace', taken: true },
    ),
    line(
      'belt-north-west',
      [
        [-58, -20],
        [-56, 50],
        [-14, 54],
      ],
      {
        kind: 'belt',
        name: 'North-west belt',
        status: 'existing',
        species: 'Cupressus macrocarpa',
        heightM: 9,
        measuredYear: 2026,
        widthM: 4,
      },
    ),
    ...TREES.map(([tag, species, spot, rest]) =>
      point(`tree-${tag.toLowerCase()}`, spot, {
        kind: 'tree',
        tag,
        status: 'planned',
        species,
        plantedYear: 2028,
        ...rest,
      }),
    ),
    area(
      'patch-walnut-ground',
      [
        [-30, -20],
        [-6, -20],
        [-6, 0],
        [-30, 0],
      ],
      { kind: 'patch', name: 'Walnut ground' },
    ),
    area(
      'patch-sunny-rows',
      [
        [16, -6],
        [44, -6],
        [44, 14],
        [16, 14],
      ],
      { kind: 'patch', name: 'Sunny rows', layer: 'shrub' },
    ),
  ];
}

/** A small invented site on a southern river plain, without terrain or weather files. */
export function kestrelFlatSite(): SiteDocument {
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Kestrel Flat',
      timeZone: 'Pacific/Auckland',
      baseYear: BASE_YEAR,
      terrainPlane: { fallDeg: 0.4, towardDeg: 115 },
      wind: {
        heightM: 10,
        calmShare: CALM_SHARE,
        sectors: WIND.map(([weight, meanSpeedMps], i) => ({
          fromDeg: 45 * i,
          frequency: Number(((weight / totalWeight) * (1 - CALM_SHARE)).toFixed(4)),
          meanSpeedMps,
          weibullK: 1.8,
        })),
      },
      sunshineShareByMonth: [0.46, 0.46, 0.47, 0.48, 0.45, 0.45, 0.46, 0.47, 0.46, 0.46, 0.46, 0.45],
      growingSeason: { firstDay: '10-01', lastDay: '03-31' },
      lightToKeep: { share: 0.4, areaShare: 0.7 },
      species: [],
      layouts: [],
      note: 'Invented by the seeded script data-samples/make.ts: no such place.',
    },
    features: features(sketchAt([171.9, -43.6])),
  };
}
