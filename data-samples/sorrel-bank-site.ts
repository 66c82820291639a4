import { type LocalBox, localBoxOf, widenedBox } from '../src/geo/local-box.ts';
import type { SiteDocument } from '../src/site/document.ts';
import type { WindSector } from '../src/site/records/site.ts';
import type { InventedClimate } from './invented-weather.ts';
import { type Sketch, sketchAt } from './sketch.ts';
import { sorrelBankEdges } from './sorrel-bank-edges.ts';
import { sorrelBankLand } from './sorrel-bank-land.ts';
import { SORREL_BANK_LAYOUTS, sorrelBankLayouts } from './sorrel-bank-layouts.ts';
import { sorrelBankPatches } from './sorrel-bank-patches.ts';
import { sorrelBankShelter } from './sorrel-bank-shelter.ts';
import { sorrelBankTrees } from './sorrel-bank-trees.ts';

const MIDDLE: readonly [number, number] = [-64.5, 45.1];
const BASE_YEAR = 2027;
const CALM_SHARE = 0.03;
const SUNSHINE_SHARE = [0.35, 0.4, 0.42, 0.42, 0.46, 0.49, 0.52, 0.53, 0.49, 0.44, 0.33, 0.3];
/** Ground beyond the fields that the terrain file covers. */
const GROUND_MARGIN_M = 150;

/** Weights and mean speeds by sector of 30 degrees from north; the weights are scaled to what the calms leave. */
const WIND = {
  growing: [
    [4, 3.1],
    [4, 3.2],
    [5, 3.3],
    [5, 3.0],
    [6, 2.9],
    [8, 3.2],
    [11, 3.7],
    [18, 4.2],
    [16, 4.3],
    [10, 4.0],
    [8, 3.9],
    [5, 3.4],
  ],
  rest: [
    [6, 4.1],
    [6, 4.4],
    [6, 4.6],
    [5, 4.2],
    [4, 3.8],
    [5, 4.0],
    [8, 4.6],
    [13, 5.3],
    [15, 5.7],
    [14, 5.6],
    [11, 5.4],
    [7, 4.5],
  ],
} as const;

const sectors: readonly WindSector[] = (['growing', 'rest'] as const).flatMap((season) => {
  const total = WIND[season].reduce((sum, [weight]) => sum + weight, 0);
  return WIND[season].map(([weight, meanSpeedMps], i) => ({
    fromDeg: 30 * i,
    frequency: Number(((weight / total) * (1 - CALM_SHARE)).toFixed(4)),
    meanSpeedMps,
    weibullK: season === 'growing' ? 2 : 1.9,
    season,
  }));
});

export const sorrelBankClimate: InventedClimate = {
  place: 'Sorrel Bank',
  latDeg: MIDDLE[1],
  lonDeg: MIDDLE[0],
  zoneHours: -4,
  elevationM: 74,
  year: BASE_YEAR,
  meanTemperatureC: [-5.5, -5.2, -1.2, 4.8, 10.7, 15.6, 19.2, 18.9, 14.8, 9.1, 4, -2],
  sunshineShare: SUNSHINE_SHARE,
  sectors,
  calmShare: CALM_SHARE,
  growingMonths: [3, 8],
};

export function sorrelBankSketch(): Sketch {
  return sketchAt(MIDDLE);
}

export function sorrelBankSite(sketch: Sketch): SiteDocument {
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Sorrel Bank',
      timeZone: 'America/Halifax',
      baseYear: BASE_YEAR,
      terrainFile: 'sorrel-bank-ground.tif',
      surfaceFile: null,
      weatherFile: 'sorrel-bank-weather.epw',
      wind: { heightM: 10, calmShare: CALM_SHARE, sectors: [...sectors] },
      sunshineShareByMonth: SUNSHINE_SHARE,
      growingSeason: { firstDay: '04-01', lastDay: '09-30' },
      lightToKeep: { share: 0.4, areaShare: 0.7 },
      species: [],
      layouts: SORREL_BANK_LAYOUTS,
      note: 'Invented by the seeded script data-samples/make.ts: no such place.',
    },
    features: [
      sorrelBankLand,
      sorrelBankEdges,
      sorrelBankShelter,
      sorrelBankTrees,
      sorrelBankPatches,
      sorrelBankLayouts,
    ].flatMap((draw) => draw(sketch)),
  };
}

/** The fields with a margin, in the sketch's local frame. */
export function sorrelBankGroundBox(sketch: Sketch, document: SiteDocument): LocalBox {
  const fields = document.features.filter(({ properties }) => properties.kind === 'field');
  const corners = fields.flatMap(({ geometry }) =>
    geometry.type === 'Polygon' ? geometry.coordinates[0] : [],
  );
  const box = localBoxOf(
    sketch.frame,
    corners.map(([lonDeg, latDeg]) => [lonDeg, latDeg] as const),
  );
  if (!box) throw new Error('Sorrel Bank has lost its fields.');
  return widenedBox(box, GROUND_MARGIN_M);
}
