/** Lays barriers and their ends on the cells of a tile, in as many leaf states at once as the kernel has lanes. */
import {
  BESIDE_H,
  besideStrength,
  endBreadth,
  endGain,
  metPorosity,
  obliqueCosine,
  shelterReachM,
  youngStrength,
} from './barrier-effects.ts';
import { areaPanels, linePanels } from './barrier-panels.ts';
import type { Piece } from './barrier-pieces.ts';
import { type GroupExtent, groupExtents } from './group-extents.ts';
import { LANE_BYTES, LANES } from './kernel/assembly/layout.ts';
import { type ShelterKernel, startShelterKernel } from './kernel/kernel.ts';
import { nodesOver } from './line-reach.ts';
import type { ShelterPhase } from './shelter-phases.ts';
import { acrossWind, type ShelterTile, type WindRay } from './shelter-tile.ts';
import type { ShelterOptions, ShelterRequest } from './shelter-types.ts';
import { splatPanels } from './splat-panels.ts';
import {
  deficitAt,
  deficitTable,
  distanceNode,
  fillDeficits,
  type LineRoom,
  overPorousFactor,
  tableRow,
  takeLineRoom,
} from './weps-table.ts';

/** Where a tile is worked out, and what is the same for all its directions. */
export interface Ground {
  readonly kernel: ShelterKernel;
  readonly tile: ShelterTile;
  /** Address of the deficits, one float for each lane of a cell. */
  readonly deficits: number;
  readonly line: LineRoom;
  /** Address of scratch: the gains of one end or the deficits at one line. */
  readonly gains: number;
  readonly pieces: readonly Piece[];
  readonly readingHeightM: number;
  readonly options: ShelterOptions;
}

/** What is common to the pieces in one direction. */
export interface Blow {
  readonly ray: WindRay;
  readonly extents: readonly GroupExtent[];
}

/** A kernel with room for tiles of so many cells. */
export function openGround(
  { readingHeightM, options }: ShelterRequest,
  mostCells: number,
): Omit<Ground, 'tile' | 'pieces'> {
  const kernel = startShelterKernel();
  return {
    kernel,
    deficits: kernel.take(mostCells * LANE_BYTES),
    line: takeLineRoom(kernel),
    gains: kernel.take(LANE_BYTES),
    readingHeightM,
    options,
  };
}

export function blowOver({ kernel, pieces }: Ground, ray: WindRay): Blow {
  kernel.setWind(ray.upX, ray.upY);
  return { ray, extents: groupExtents(pieces, ray) };
}

/** Cosine of a piece to the wind; areas take the wind's own path as their width instead. */
function cosineOf({ barrier, xyM }: Piece, ray: WindRay, options: ShelterOptions): number {
  if (barrier.shape === 'area') return 1;
  const across = acrossWind(ray, xyM[2], xyM[3]) - acrossWind(ray, xyM[0], xyM[1]);
  return obliqueCosine(across, Math.hypot(xyM[2] - xyM[0], xyM[3] - xyM[1]), options);
}

/** Leaf states in which a piece is worked out: one stands for all where its foliage does not change. */
const statesOf = ({ barrier }: Piece, phases: readonly ShelterPhase[]): readonly number[] =>
  (barrier.porosityOn === barrier.porosityOff ? phases.slice(0, 1) : phases).map(
    ({ leafShare }) => leafShare[barrier.leafClass],
  );

export function layPiece(
  ground: Ground,
  { ray, extents }: Blow,
  piece: Piece,
  phases: readonly ShelterPhase[],
): void {
  const { kernel, tile, deficits, options, readingHeightM, line } = ground;
  const { barrier, xyM, heightM } = piece;
  const extent = extents[piece.group];
  const reachM = shelterReachM(extent.greatest - extent.least, options);
  const cosine = cosineOf(piece, ray, options);
  const states = statesOf(piece, phases);
  if (barrier.shape === 'line' && heightM[0] === heightM[1]) {
    const height = heightM[0];
    const strength = height > 0 ? youngStrength(height, readingHeightM, options) : 0;
    const nodes = strength > 0 ? nodesOver(tile, ray, xyM, height) : null;
    if (!nodes) return;
    const places = states.map((leafShare) => {
      const porosity = metPorosity(barrier, leafShare, cosine, height, options);
      return {
        row: tableRow(porosity, barrier.widthM / cosine / height),
        factor: overPorousFactor(porosity) * strength,
      };
    });
    fillDeficits(kernel, line, places, { heightM: height, reachM }, nodes);
    kernel.layLine(xyM[0], xyM[1], xyM[2], xyM[3], height, line.deficits);
    return;
  }
  const panels =
    barrier.shape === 'area'
      ? areaPanels(ray, xyM, heightM)
      : linePanels(ray, xyM, heightM, barrier.widthM / cosine);
  states.forEach((leafShare, lane) => {
    const effects = {
      porosityAt: (height: number) => metPorosity(barrier, leafShare, cosine, height, options),
      strengthAt: (height: number) => youngStrength(height, readingHeightM, options),
      reachM,
      insideWoods: options.insideWoods,
    };
    const lanes = [lane, states.length === 1 ? LANES - 1 : lane] as const;
    splatPanels(tile, ray, panels, effects, deficitTable(), kernel.floats, deficits / 4, lanes);
  });
}

/** The stiller air beside a straight piece that the wind blows along, to four heights. */
export function layBeside(
  { kernel, gains, options, readingHeightM }: Ground,
  { ray }: Blow,
  piece: Piece,
  phases: readonly ShelterPhase[],
): void {
  const { barrier, xyM, heightM } = piece;
  if (barrier.shape === 'area') return;
  const [x1, y1, x2, y2] = xyM;
  const across = acrossWind(ray, x2, y2) - acrossWind(ray, x1, y1);
  const beside = besideStrength(across, Math.hypot(x2 - x1, y2 - y1), options);
  const meanM = (heightM[0] + heightM[1]) / 2;
  if (beside === 0 || !(meanM > 0)) return;
  const strength = beside * youngStrength(meanM, readingHeightM, options);
  const states = statesOf(piece, phases);
  for (let lane = 0; lane < LANES; lane++) {
    const porosity = metPorosity(barrier, states[Math.min(lane, states.length - 1)], 1, meanM, options);
    const atLine = deficitAt(deficitTable(), tableRow(porosity, barrier.widthM / meanM), distanceNode(0));
    kernel.floats[gains / 4 + lane] = strength * overPorousFactor(porosity) * atLine;
  }
  kernel.layBeside(x1, y1, x2, y2, heightM[0], heightM[1], BESIDE_H, gains);
}

/** The faster wind beside the outermost corners of everything connected; after all pieces. */
export function layEnds(ground: Ground, { ray, extents }: Blow, phases: readonly ShelterPhase[]): void {
  const { kernel, gains, options, readingHeightM } = ground;
  for (const { ends, greatest, least } of extents)
    ends.forEach(({ piece, vertex }, index) => {
      const { barrier, xyM } = piece;
      const heightM = piece.heightM[vertex];
      const strength = heightM > 0 ? youngStrength(heightM, readingHeightM, options) : 0;
      if (strength === 0) return;
      const cosine = cosineOf(piece, ray, options);
      const breadth = endBreadth(greatest - least, heightM, options);
      const states = statesOf(piece, phases);
      for (let lane = 0; lane < LANES; lane++) {
        const leafShare = states[Math.min(lane, states.length - 1)];
        const porosity = metPorosity(barrier, leafShare, cosine, heightM, options);
        kernel.floats[gains / 4 + lane] = endGain((1 - porosity) * strength * breadth);
      }
      kernel.layEnd(xyM[2 * vertex], xyM[2 * vertex + 1], heightM, index === 0 ? -1 : 1, gains);
    });
}
