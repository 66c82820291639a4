import type { Frame, LocalXY } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { GrowthMoment } from '../scene/options.ts';
import { beltOrBlockAtYear, type WindbreakStand } from '../scene/stand-at-year.ts';
import { labelOf } from '../scene/things.ts';
import { chosenFeatures, isOfKind } from '../site/chosen-features.ts';
import type { FeatureOf, SiteDocument, SiteFeature } from '../site/document.ts';
import type { XY } from '../site/plane-geometry.ts';

export type BeltLike = FeatureOf<'belt' | 'block'>;

export const isBeltLike = (feature: SiteFeature): feature is BeltLike =>
  isOfKind(feature, 'belt') || isOfKind(feature, 'block');
/** What they are called where one is asked for. */
export const BELT_LIKE_WORDS = 'belt, wood or block';

/** A belt at this age, or a standing one in this year after the base year, is what its design is judged by. */
export const JUDGED_AT_YEARS = 20;

/** A belt or block on the ground, local metres. */
export interface BeltShape {
  readonly feature: BeltLike;
  readonly label: string;
  /** Along its middle, or round a block (closed). */
  readonly line: readonly LocalXY[];
  readonly isArea: boolean;
  /** Along the line; the greatest width of a block. */
  readonly lengthM: number;
  /** As it stands twenty years after planting, or in year 20 where it stands already; null: it is gone by then. */
  readonly judged: WindbreakStand | null;
}

export const isPlanned = ({ properties }: BeltLike): boolean => properties.status === 'planned';

/** Years after the base year in which it is planted; 0 for what stands. */
export const plantedYearOf = (document: SiteDocument, { properties }: BeltLike): number =>
  properties.status === 'planned'
    ? (properties.plantedYear ?? document.site.baseYear) - document.site.baseYear
    : 0;

export function beltShape(
  document: SiteDocument,
  feature: BeltLike,
  frame: Frame,
  moment: GrowthMoment,
): BeltShape {
  const { geometry } = feature;
  const isArea = geometry.type === 'Polygon';
  const line = ringToLocal(
    frame,
    geometry.type === 'Polygon' ? geometry.coordinates[0] : geometry.coordinates,
  );
  const year = Math.max(0, plantedYearOf(document, feature)) + JUDGED_AT_YEARS;
  return {
    feature,
    label: labelOf(document, feature),
    line,
    isArea,
    lengthM: isArea ? widestM(line) : lengthOfM(line),
    judged: beltOrBlockAtYear(document, feature, { ...moment, year }),
  };
}

/** Every belt and block of the layout, in the order of the file. */
export const beltShapes = (document: SiteDocument, frame: Frame, moment: GrowthMoment): BeltShape[] =>
  chosenFeatures(document, moment.layout)
    .filter(isBeltLike)
    .map((feature) => beltShape(document, feature, frame, moment));

const lengthOfM = (line: readonly XY[]): number =>
  line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - line[i][0], y - line[i][1]), 0);

const widestM = (ring: readonly XY[]): number =>
  Math.max(...ring.flatMap((a) => ring.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
