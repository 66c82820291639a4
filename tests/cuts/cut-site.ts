import type { CutSetting } from '../../src/jobs/run-winter-cuts.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { patchMasks } from '../../src/scene/patch-masks.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { featuresOfKind } from '../../src/site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import type { CareRecord } from '../../src/site/records/care.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { at } from '../belts/proposed-field.ts';

const square = (halfM: number, x = 0, y = 0) => ({
  type: 'Polygon' as const,
  coordinates: [
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
      [-1, -1],
    ].map(([a, b]) => at(x + a * halfM, y + b * halfM)),
  ],
});

export interface TreeDrawn {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly species?: string;
  readonly heightM: number;
  readonly more?: {
    readonly owner?: string;
    readonly care?: readonly CareRecord[];
    readonly rootstock?: string;
  };
}

/** A field with one patch of 8 m by 8 m in its middle and some trees. */
export function cutSite(trees: readonly TreeDrawn[], shareToKeep: number): SiteDocument {
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Cuts',
      timeZone: 'Europe/Berlin',
      baseYear: 2027,
      lightToKeep: { share: shareToKeep, areaShare: 0.7 },
    },
    features: [
      {
        type: 'Feature',
        id: 'field',
        geometry: square(40),
        properties: { kind: 'field', name: 'Field', taken: true },
      },
      {
        type: 'Feature',
        id: 'patch',
        geometry: square(4),
        properties: { kind: 'patch', name: 'Herbs', layer: 'ground' },
      },
      ...trees.map(({ id, x, y, species, heightM, more }) => ({
        type: 'Feature',
        id,
        geometry: { type: 'Point', coordinates: at(x, y) },
        properties: { kind: 'tree', tag: id, heightM, ...(species ? { species } : {}), ...more },
      })),
    ] as SiteFeature[],
  };
}

const SPECIES = ['Alnus cordata', 'Juglans regia', 'Corylus avellana', 'Malus domestica'];

/** Eight trees around the patch. */
export function eightTrees(seed: number): TreeDrawn[] {
  const random = seededRandom(seed);
  return Array.from({ length: 8 }, (_, i) => {
    const turn = (2 * Math.PI * (i + random())) / 8;
    const awayM = 5 + 6 * random();
    return {
      id: `T${i + 1}`,
      x: awayM * Math.sin(turn),
      y: awayM * Math.cos(turn),
      species: SPECIES[Math.floor(random() * SPECIES.length)],
      heightM: 6 + 8 * random(),
    };
  });
}

export function cutSetting(document: SiteDocument, year = 1): CutSetting {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  const field = featuresOfKind(document.features, 'field')[0];
  return {
    document,
    wish: { year, refused: [] },
    scene: { year, layout: null, pace: 'usual', frame, ground, weather: null },
    patches: patchMasks(document, {
      frame,
      layout: null,
      fields: [field],
      readingHeightM: 0.1,
      cellM: 1.6,
      mostCells: 36,
    }),
    field,
    windHeightM: 1.5,
    galeMps: 10.8,
    shelter: USUAL_SHELTER_OPTIONS,
  };
}
