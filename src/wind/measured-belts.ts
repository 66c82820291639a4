import { DOWNWIND_REACH_H, frictionShare } from './weps.ts';

/**
 * What was measured behind real belts, by distance in belt heights: the range beside the published function. Only what
 * was read in its source stands here; the widely copied table of Nebraska EC 91-1763 is known from memory alone and is
 * left out. Shares are of open wind speed.
 */
export type SourceId = 'iowa' | 'moravia' | 'ontario' | 'victoria';

export interface MeasuredSource {
  readonly place: string;
  readonly belts: string;
  readonly source: string;
}

export const MEASURED_SOURCES: Readonly<Record<SourceId, MeasuredSource>> = {
  iowa: {
    place: 'Iowa',
    belts: 'a moderately dense belt',
    source:
      'Iowa State University Extension, Farmstead Windbreaks: Planning, Table 1 (distances put in order by falling shelter)',
  },
  moravia: {
    place: 'Moravia',
    belts: 'four belts of 15 to 18 m in full leaf, a tenth of the daylight showing through',
    source:
      'Aerodynamic parameters of windbreak based on its optical porosity, Contributions to Geophysics and Geodesy',
  },
  ontario: {
    place: 'Ontario',
    belts: 'nine conifer belts, 0 to 31 % of the daylight showing through their lower half',
    source: 'Loeffler, Gordon & Gillespie, Agroforestry Systems 17:119-133',
  },
  victoria: {
    place: 'Victoria',
    belts: 'eleven belts, 16 to 53 % of the daylight showing through',
    source: 'Bird, Jackson, Kearney & Roache 2007, Australian Journal of Experimental Agriculture 47:727-737',
  },
};

/** Middle of the Moravian belts' 15 to 18 m, by which their 50, 150 and 250 m are read. */
const MORAVIAN_HEIGHT_M = 16.5;

/** A curve read at several distances: [heights behind the belt, share of open wind]. */
export type Curve = readonly (readonly [distanceH: number, share: number])[];

/** Curves of belts that were measured at several distances. */
export const MEASURED_CURVES: Readonly<Record<'iowa' | 'moravia', Curve>> = {
  // Reductions of 78, 66, 35, 14, 10 and 4 %.
  iowa: [
    [5, 0.22],
    [10, 0.34],
    [15, 0.65],
    [20, 0.86],
    [25, 0.9],
    [30, 0.96],
  ],
  // 60 % less at 50 m, 30 % less at 150 m, nothing from 250 m.
  moravia: [
    [50 / MORAVIAN_HEIGHT_M, 0.4],
    [150 / MORAVIAN_HEIGHT_M, 0.7],
    [250 / MORAVIAN_HEIGHT_M, 1],
  ],
};

/** Ontario: where the quietest place of each of the nine belts lay, and how quiet it was. */
export const QUIETEST_OF_NINE = { fromH: 2, toH: 6, leastShare: 0.29, mostShare: 0.71 } as const;
/** Victoria: the wind stayed below this share of open wind to 8 H behind the weakest of the eleven, to 25 H behind the best. */
export const BELOW_FOUR_FIFTHS = { share: 0.8, weakestH: 8, bestH: 25 } as const;
/** Victoria: at most that much at one height upwind of each. */
export const UPWIND_OF_ELEVEN = { distanceH: -1, mostShare: 0.8 } as const;

/** The edges of all that was measured, from 2 H on: the best belt at each distance, and the weakest. */
export const MEASURED_BAND: { readonly best: Curve; readonly weakest: Curve } = {
  best: [
    [QUIETEST_OF_NINE.fromH, QUIETEST_OF_NINE.leastShare],
    ...MEASURED_CURVES.iowa.filter(([distanceH]) => distanceH <= 15),
    [BELOW_FOUR_FIFTHS.bestH, BELOW_FOUR_FIFTHS.share],
    [30, 0.96],
  ],
  weakest: [
    [QUIETEST_OF_NINE.fromH, QUIETEST_OF_NINE.mostShare],
    [QUIETEST_OF_NINE.toH, QUIETEST_OF_NINE.mostShare],
    [BELOW_FOUR_FIFTHS.weakestH, BELOW_FOUR_FIFTHS.share],
    [250 / MORAVIAN_HEIGHT_M, 1],
    [30, 1],
  ],
};

/** Belts more open than this are not among those measured. */
export const MOST_MEASURED_POROSITY = 0.6;

/** Largest distance at which a curve still cuts the wind by `cut`, in heights; straight between its points. */
function reachOfCurve(curve: Curve, cut: number): number {
  for (let i = curve.length - 1; i > 0; i--) {
    const [x1, share1] = curve[i];
    const [x0, share0] = curve[i - 1];
    if (1 - share1 >= cut) return x1;
    if (1 - share0 >= cut) return x0 + ((1 - cut - share0) / (share1 - share0)) * (x1 - x0);
  }
  return 0;
}

export interface MeasuredReach {
  /** Heights behind the belt to which the wind was cut by so much. */
  readonly nearestH: number;
  readonly farthestH: number;
  readonly nearest: SourceId;
  readonly farthest: SourceId;
}

/** How far measured belts cut the wind by `cut`: of the belts whose reach can be read off, the shortest and the longest. */
export function measuredReach(cut: number): MeasuredReach {
  const found: [SourceId, number][] = (['iowa', 'moravia'] as const).map((id) => [
    id,
    reachOfCurve(MEASURED_CURVES[id], cut),
  ]);
  // A belt that cuts the wind by 20 % there cuts it by less there too.
  if (cut <= 1 - BELOW_FOUR_FIFTHS.share) {
    found.push(['victoria', BELOW_FOUR_FIFTHS.weakestH], ['victoria', BELOW_FOUR_FIFTHS.bestH]);
  }
  found.sort((a, b) => a[1] - b[1]);
  const [nearest, nearestH] = found[0];
  const [farthest, farthestH] = found[found.length - 1];
  return { nearestH, farthestH, nearest, farthest };
}

const STEP_H = 0.05;

/**
 * Heights behind a long belt square to the wind to which the published function cuts it by `cut`; null where it never
 * does. @param porosity optical, through the whole width. @param widthH width in heights.
 */
export function functionReachH(porosity: number, widthH: number, cut: number): number | null {
  for (let i = Math.round(DOWNWIND_REACH_H / STEP_H); i >= 0; i--) {
    const distanceH = i * STEP_H;
    if (1 - frictionShare(porosity, distanceH, widthH) >= cut) return distanceH;
  }
  return null;
}

/** The published function along the wind over a belt, from 5 H upwind to 35 H behind. */
export function functionCurve(porosity: number, widthH: number): Curve {
  return Array.from({ length: 160 }, (_, i) => {
    const distanceH = -5 + (i + 1) / 4;
    return [distanceH, frictionShare(porosity, distanceH, widthH)] as const;
  });
}
