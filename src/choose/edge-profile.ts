import { cellCount, type GridSpec } from '../numeric/grid.ts';
import type { StateMaps } from './choose-types.ts';
import type { BesideEdge } from './edge-cells.ts';
import type { EdgeBest, EdgeBin, EdgeNeeds, EdgeStretch, EdgeUse, EdgeYear } from './edge-types.ts';

/** Widths of a bin, m; the first that is wide enough is taken. */
const WIDTHS_M = [0.25, 0.5, 1, 2, 4, 5, 10, 20];
const CELLS_A_BIN = 1.5;
const MOST_BINS = 80;
/** A bin along less of the edge than this, of the longest one, is a corner of the field and no part of the profile. */
const LEAST_LENGTH_SHARE = 0.15;
/** A side with less of the ground than this beside the edge is a sliver. */
const LEAST_SIDE_SHARE = 0.1;
/** Faces of a wood that belong to one side, in eighths of the circle to either hand of the largest. */
const FACES_BESIDE = 1;

/** Ground on one side: its cells, and the way from the edge. */
export interface SideCells {
  readonly cells: Uint32Array;
  /** Grid azimuth, radians. */
  readonly facingRad: number;
}

/** Cells on each side of an edge that are no farther than `reachM`; of a wood the side with most ground alone. */
export function sidesOf(beside: BesideEdge, closed: boolean, reachM: number): SideCells[] {
  const { distanceM, side, facingRad } = beside;
  const bySide: number[][] = Array.from({ length: 8 }, () => []);
  for (let cell = 0; cell < distanceM.length; cell++)
    if (distanceM[cell] <= reachM) bySide[side[cell]].push(cell);
  const groups = closed ? [largestFace(bySide)] : bySide.slice(0, 2);
  const all = groups.reduce((sum, cells) => sum + cells.length, 0);
  return groups
    .filter((cells) => cells.length > LEAST_SIDE_SHARE * all)
    .toSorted((a, b) => b.length - a.length)
    .map((cells) => {
      let [east, north] = [0, 0];
      for (const cell of cells) {
        east += Math.sin(facingRad[cell]);
        north += Math.cos(facingRad[cell]);
      }
      return { cells: Uint32Array.from(cells), facingRad: Math.atan2(east, north) };
    });
}

function largestFace(byFace: readonly (readonly number[])[]): number[] {
  const most = byFace.reduce((best, cells, face) => (cells.length > byFace[best].length ? face : best), 0);
  return byFace.flatMap((cells, face) => {
    const apart = Math.abs(face - most);
    return Math.min(apart, byFace.length - apart) <= FACES_BESIDE ? cells : [];
  });
}

/** How wide a bin is where the farthest ground is so far from the edge. */
export function binWidthM(cellM: number, farthestM: number): number {
  const leastM = Math.max(CELLS_A_BIN * cellM, farthestM / MOST_BINS);
  return WIDTHS_M.find((widthM) => widthM >= leastM) ?? leastM;
}

/** Means by distance over some cells, nearest first; cells that know neither light nor wind are left out. */
export function edgeBins(
  grid: GridSpec,
  { distanceM }: Pick<BesideEdge, 'distanceM'>,
  cells: Uint32Array,
  { lightShare, windShare }: StateMaps,
  needs: EdgeNeeds,
  widthM: number,
): EdgeBin[] {
  if (distanceM.length !== cellCount(grid))
    throw new RangeError(`expected ${cellCount(grid)} distances, got ${distanceM.length}`);
  const sums: { cells: number; at: number; light: number; cut: number; both: number }[] = [];
  for (const cell of cells) {
    const light = lightShare[cell];
    const cut = 1 - windShare[cell];
    if (Number.isNaN(light) || Number.isNaN(cut)) continue;
    const bin = Math.floor(distanceM[cell] / widthM);
    sums[bin] ??= { cells: 0, at: 0, light: 0, cut: 0, both: 0 };
    sums[bin].cells++;
    sums[bin].at += distanceM[cell];
    sums[bin].light += light;
    sums[bin].cut += cut;
    if (light >= needs.sunLight && cut >= needs.windCut) sums[bin].both++;
  }
  const most = sums.reduce((n, each) => Math.max(n, each.cells), 0);
  return sums.flatMap((sum, bin): EdgeBin[] =>
    sum.cells < LEAST_LENGTH_SHARE * most
      ? []
      : [
          {
            fromM: bin * widthM,
            toM: (bin + 1) * widthM,
            atM: sum.at / sum.cells,
            areaM2: sum.cells * grid.cellM ** 2,
            lightShare: sum.light / sum.cells,
            windCut: sum.cut / sum.cells,
            bothShare: sum.both / sum.cells,
          },
        ],
  );
}

/** What ground with so much light and shelter is good for. */
export function goodFor(
  { lightShare, windCut }: Pick<EdgeBin, 'lightShare' | 'windCut'>,
  needs: EdgeNeeds,
): EdgeUse {
  if (lightShare < needs.shadeLight) return 'dark';
  const sheltered = windCut >= needs.windCut;
  if (lightShare >= needs.sunLight) return sheltered ? 'sun' : 'exposed';
  return sheltered ? 'shade' : 'neither';
}

/** What the bins of a year come to. */
export function edgeYear(
  year: number,
  heightM: number | null,
  bins: readonly EdgeBin[],
  needs: EdgeNeeds,
): EdgeYear {
  const stretches: EdgeStretch[] = [];
  for (const bin of bins) {
    const use = goodFor(bin, needs);
    const last = stretches.at(-1);
    if (last?.use === use && last.toM === bin.fromM)
      stretches[stretches.length - 1] = { ...last, toM: bin.toM };
    else stretches.push({ use, fromM: bin.fromM, toM: bin.toM });
  }
  const best = (use: EdgeUse): EdgeBest | null => {
    const good = bins.filter((bin) => goodFor(bin, needs) === use);
    if (good.length === 0) return null;
    const worth = ({ lightShare, windCut }: EdgeBin) => lightShare * windCut;
    const most = good.reduce((a, b) => (worth(b) > worth(a) ? b : a));
    return { atM: most.atM, lightShare: most.lightShare, windCut: most.windCut };
  };
  return { year, heightM, bins, stretches, bestSun: best('sun'), bestShade: best('shade') };
}
