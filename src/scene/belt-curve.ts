import type { FeatureOf, SiteDocument } from '../site/document.ts';
import {
  BELOW_FOUR_FIFTHS,
  type Curve,
  functionCurve,
  functionReachH,
  MEASURED_BAND,
  MEASURED_CURVES,
  MEASURED_SOURCES,
  type MeasuredSource,
  MOST_MEASURED_POROSITY,
  measuredReach,
  QUIETEST_OF_NINE,
} from '../wind/measured-belts.ts';
import type { GrowthMoment } from './options.ts';
import { beltOrBlockAtYear, wallAtYear } from './stand-at-year.ts';

/** Cuts whose reach is told. */
const CUTS = [0.5, 0.3, 0.15] as const;

/** What was measured behind belts, as it is drawn beside the function. */
export const MEASURED_BELTS = {
  band: MEASURED_BAND,
  ...MEASURED_CURVES,
  ontario: QUIETEST_OF_NINE,
  victoria: BELOW_FOUR_FIFTHS,
} as const;

/** One leaf state of a belt. */
export interface BeltCurveState {
  readonly leaf: 'in leaf' | 'bare' | 'all year';
  readonly porosity: number;
  /** The published function along the wind: [heights behind, share of open wind]. */
  readonly curve: Curve;
}

/** How far the wind is cut by so much, metres behind the belt. */
export interface BeltReach {
  readonly cut: number;
  /** By the function, one a leaf state; null: nowhere. */
  readonly functionM: readonly (number | null)[];
  /** Null where no belt as open was measured. */
  readonly measured: {
    readonly nearestM: number;
    readonly farthestM: number;
    readonly nearest: MeasuredSource;
    readonly farthest: MeasuredSource;
  } | null;
}

/** A long belt, wall or net square to the wind: what the function promises and what was measured. */
export interface BeltCurve {
  readonly heightM: number;
  /** Open below the leaves to this height; the porosities count it in. */
  readonly footM: number;
  readonly states: readonly BeltCurveState[];
  readonly reaches: readonly BeltReach[];
}

/** The curve of a belt or wall as it stands at one moment; null while it is not there. */
export function beltCurve(
  document: SiteDocument,
  feature: FeatureOf<'belt' | 'wall'>,
  moment: GrowthMoment,
): BeltCurve | null {
  const stand =
    feature.properties.kind === 'wall'
      ? wallAtYear(document, feature as FeatureOf<'wall'>, moment)
      : beltOrBlockAtYear(document, feature as FeatureOf<'belt'>, moment);
  if (!stand || !(stand.heightM > 0)) return null;
  const { heightM, widthM, porosityOn, porosityOff, baseM } = stand;
  const widthH = widthM / heightM;
  // A raised foot opens it by its share of the height, as in the map.
  const open = Math.min(1, Math.max(0, baseM / heightM));
  const states = (
    porosityOn === porosityOff
      ? [['all year', porosityOn] as const]
      : [['in leaf', porosityOn] as const, ['bare', porosityOff] as const]
  ).map(([leaf, foliage]): BeltCurveState => {
    const porosity = foliage + (1 - foliage) * open;
    return { leaf, porosity, curve: functionCurve(porosity, widthH) };
  });
  const densest = Math.min(...states.map(({ porosity }) => porosity));
  const reaches = CUTS.map((cut): BeltReach => {
    const { nearestH, farthestH, nearest, farthest } = measuredReach(cut);
    return {
      cut,
      functionM: states.map(({ porosity }) => {
        const reachH = functionReachH(porosity, widthH, cut);
        return reachH === null ? null : reachH * heightM;
      }),
      measured:
        densest > MOST_MEASURED_POROSITY
          ? null
          : {
              nearestM: nearestH * heightM,
              farthestM: farthestH * heightM,
              nearest: MEASURED_SOURCES[nearest],
              farthest: MEASURED_SOURCES[farthest],
            },
    };
  });
  return { heightM, footM: Math.max(0, baseM), states, reaches };
}
