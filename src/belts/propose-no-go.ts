/** Where no belt may stand: how far every feature is kept from its middle line. Local metres. */
import type { Frame, LonLat } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { treeAtYear } from '../scene/stand-at-year.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { distanceToLineM, isInside, type XY } from '../site/plane-geometry.ts';
import { beltDefaults } from '../site/records/belt.ts';
import { keepOutDefaults, pathDefaults, serviceDefaults } from '../site/records/way.ts';
import type { BeltPlant } from './propose-types.ts';

/** Free ground between a belt and the field's edge, a wall or another belt: room to walk and trim. Common practice, no source. */
export const STAND_OFF_M = 1;
/** A gate and the ground before it stay free at least so far. Common practice, no source. */
const GATE_FREE_M = 4;
/** Beside what is planted as understorey. Common practice, no source. */
const PATCH_FREE_M = 0.5;
/** A belt refused once is not proposed again on the same ground. */
const REFUSED_M = 6;
/**
 * Buildings, as if they stood on clay: zone of influence in mature heights, high and moderate water demand (NHBC
 * Standards 4.2). On other ground less may do: ask.
 */
const CLAY_HEIGHTS_THIRSTY = 1.25;
const CLAY_HEIGHTS = 0.75;
/** Roots that seek water are kept from drains by three quarters of the mature height (common practice, no source). */
const DRAIN_HEIGHTS_THIRSTY = 0.75;

const HOLDS_WATER = /drain|pipe|sewer|water|ditch/i;
const IS_GATE = /gate|entrance|access/i;

interface Zone {
  /** Rings of an area, or one line; local metres. */
  readonly area: boolean;
  readonly lines: readonly (readonly XY[])[];
  readonly box: readonly [number, number, number, number];
  readonly clearM: (plant: BeltPlant) => number;
}

function zone(area: boolean, lines: readonly (readonly XY[])[], clearM: Zone['clearM']): Zone {
  const xs = lines.flatMap((line) => line.map(([x]) => x));
  const ys = lines.flatMap((line) => line.map(([, y]) => y));
  return { area, lines, clearM, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
}

/** How far a feature is kept from a belt's middle line; null: it is no hindrance. */
function clearanceOf(
  document: SiteDocument,
  feature: SiteFeature,
  moment: GrowthMoment,
): Zone['clearM'] | null {
  const { properties: p } = feature;
  const reason =
    'reason' in p && typeof p.reason === 'string' ? `${p.reason} ${p.name ?? ''}` : (p.name ?? '');
  const plus = (metres: number) => (plant: BeltPlant) => metres + plant.widthM / 2;
  switch (p.kind) {
    case 'service': {
      const offsetM = p.offsetM ?? serviceDefaults.offsetM;
      const thirst = HOLDS_WATER.test(reason) ? DRAIN_HEIGHTS_THIRSTY : 0;
      return (plant) =>
        Math.max(offsetM + plant.widthM / 2, plant.thirsty ? thirst * plant.matureHeightM : 0);
    }
    case 'keepOut':
    case 'path': {
      const offsetM = p.offsetM ?? (p.kind === 'path' ? pathDefaults : keepOutDefaults).offsetM;
      return plus(IS_GATE.test(reason) ? Math.max(GATE_FREE_M, offsetM) : offsetM);
    }
    case 'building':
      return (plant) =>
        Math.max(
          STAND_OFF_M + plant.widthM / 2,
          (plant.thirsty ? CLAY_HEIGHTS_THIRSTY : CLAY_HEIGHTS) * plant.matureHeightM,
        );
    case 'wall':
    case 'block':
      return plus(STAND_OFF_M);
    case 'belt':
      return plus(STAND_OFF_M + (p.widthM ?? beltDefaults.widthM) / 2);
    case 'tree': {
      const stand = isOfKind(feature, 'tree') ? treeAtYear(document, feature, moment) : null;
      return stand ? plus(stand.radiusM) : null;
    }
    case 'patch':
    case 'planting':
      return plus(PATCH_FREE_M);
    default:
      return null;
  }
}

/** Whether a belt of a plant may pass over a point. */
export type MayStand = (at: XY, plant: BeltPlant) => boolean;

/** All features of the layout, whether they stand yet or not, and what was refused before. */
export function noGo(
  document: SiteDocument,
  frame: Frame,
  moment: GrowthMoment,
  refused: readonly (readonly LonLat[])[],
): MayStand {
  const zones = chosenFeatures(document, moment.layout).flatMap((feature): Zone[] => {
    const clearM = clearanceOf(document, feature, moment);
    if (!clearM) return [];
    const { geometry } = feature;
    if (geometry.type === 'Point') return [zone(false, [ringToLocal(frame, [geometry.coordinates])], clearM)];
    if (geometry.type === 'LineString')
      return [zone(false, [ringToLocal(frame, geometry.coordinates)], clearM)];
    return [
      zone(
        true,
        geometry.coordinates.map((ring) => ringToLocal(frame, ring)),
        clearM,
      ),
    ];
  });
  const gone = refused.map((line) => zone(false, [ringToLocal(frame, line)], () => REFUSED_M));
  const all = [...zones, ...gone];
  return (at, plant) =>
    all.every(({ area, lines, box, clearM }) => {
      const metres = clearM(plant);
      const [x, y] = at;
      if (x < box[0] - metres || y < box[1] - metres || x > box[2] + metres || y > box[3] + metres)
        return true;
      if (area && isInside(at, lines)) return false;
      return lines.every((line) => distanceToLineM(at, line) >= metres);
    });
}
