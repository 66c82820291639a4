import type { Steps } from '../numeric/steps.ts';
import { endBreadth, metPorosity, obliqueCosine, shelterReachM, youngStrength } from './barrier-effects.ts';
import { areaPanels, linePanels } from './barrier-panels.ts';
import { barrierPieces, type Piece } from './barrier-pieces.ts';
import { checkShelterRequest } from './check-request.ts';
import { type GroupExtent, groupExtents } from './group-extents.ts';
import { type ShelterDirection, shelterDirections } from './shelter-directions.ts';
import { type ShelterPhase, shelterSeasons } from './shelter-phases.ts';
import { accumulate, addOpen, newSums, writeBands } from './shelter-sums.ts';
import { acrossWind, type ShelterTile, shelterTiles, type WindRay, windRay } from './shelter-tile.ts';
import type { ShelterOptions, ShelterRequest, ShelterResult } from './shelter-types.ts';
import { splatEnd } from './splat-end.ts';
import { splatLine } from './splat-line.ts';
import { splatPanels } from './splat-panels.ts';
import {
  DISTANCE_NODES,
  deficitTable,
  distanceOfNode,
  fillDeficits,
  overPorousFactor,
  tableRow,
} from './weps-table.ts';

const PAUSE_MS = 20;
const GROWING = 0;
const REST = 1;

/** What is common to the pieces in one direction. */
interface Blow {
  readonly ray: WindRay;
  readonly extents: readonly GroupExtent[];
  readonly readingHeightM: number;
  readonly options: ShelterOptions;
  /** Scratch, DISTANCE_NODES long. */
  readonly deficits: Float32Array;
}

/**
 * Share of open wind and gale hours on every cell: for each direction and leaf state the smallest share that any
 * barrier leaves there (the published rule for several barriers), weighted by the wind's speed and frequency.
 * The rows of a band of the grid come out exactly as they do in the whole. Yields its progress about every 20 ms.
 * Throws BadInputError where a height or porosity is out of range.
 */
export function* computeShelter(request: ShelterRequest): Steps<ShelterResult> {
  const { scene, grid, readingHeightM, options } = request;
  checkShelterRequest(request);
  const pieces = barrierPieces(scene.barriers, options.youngBelts ? readingHeightM : 0);
  const seasons = shelterSeasons(scene.leaf, scene.growingDay, scene.barriers);
  const directions = shelterDirections(
    scene.climate,
    scene.convergenceRad,
    request.galeMps,
    request.directionsASector,
  );
  const changing = pieces.filter((piece) => changesWithLeaf(piece, seasons.phases));
  const steady = pieces.filter((piece) => !changing.includes(piece));

  const cells = grid.columns * grid.rows;
  const sums = [newSums(cells), newSums(cells)];
  for (const { growing, rest } of directions) {
    addOpen(sums[GROWING], growing);
    addOpen(sums[REST], rest);
  }
  const tiles = shelterTiles(grid);
  let pausedMs = performance.now();
  for (let tileIndex = 0; tileIndex < tiles.length; tileIndex++) {
    const tile = tiles[tileIndex];
    const base = new Float32Array(tile.columns * tile.rows);
    const out = new Float32Array(tile.columns * tile.rows);
    for (let d = 0; d < directions.length && pieces.length > 0; d++) {
      const ray = windRay(directions[d].fromRad);
      const blow: Blow = {
        ray,
        extents: groupExtents(pieces, ray),
        readingHeightM,
        options,
        deficits: new Float32Array(DISTANCE_NODES),
      };
      base.fill(0);
      for (const piece of steady) {
        splatPiece(tile, blow, piece, seasons.phases[0], base);
        if (performance.now() - pausedMs > PAUSE_MS) {
          yield (tileIndex + d / directions.length) / tiles.length;
          pausedMs = performance.now();
        }
      }
      for (const phase of seasons.phases) {
        if (!phaseMatters(directions[d], phase)) continue;
        out.set(base);
        for (const piece of changing) splatPiece(tile, blow, piece, phase, out);
        if (options.endsAndGaps) splatEnds(tile, blow, phase, out);
        accumulate(sums[GROWING], directions[d].growing, phase.growingWeight, tile, out);
        accumulate(sums[REST], directions[d].rest, phase.restWeight, tile, out);
        if (performance.now() - pausedMs > PAUSE_MS) {
          yield (tileIndex + d / directions.length) / tiles.length;
          pausedMs = performance.now();
        }
      }
    }
  }
  const result = {
    grid,
    windShare: new Float32Array(3 * cells),
    galeHours: new Float32Array(3 * cells),
    directions: directions.length,
  };
  writeBands(request, tiles, sums, [seasons.growingHours, seasons.restHours], result);
  return result;
}

const changesWithLeaf = ({ barrier }: Piece, phases: readonly ShelterPhase[]): boolean =>
  barrier.porosityOn !== barrier.porosityOff &&
  phases.some(({ leafShare }) => leafShare[barrier.leafClass] !== phases[0].leafShare[barrier.leafClass]);

const phaseMatters = ({ growing, rest }: ShelterDirection, phase: ShelterPhase): boolean =>
  (growing !== null && phase.growingWeight > 0) || (rest !== null && phase.restWeight > 0);

/** Cosine of a piece to the wind; areas take the wind's own path as their width instead. */
function cosineOf({ barrier, xyM }: Piece, blow: Blow): number {
  if (barrier.shape === 'area') return 1;
  const across = acrossWind(blow.ray, xyM[2], xyM[3]) - acrossWind(blow.ray, xyM[0], xyM[1]);
  return obliqueCosine(across, Math.hypot(xyM[2] - xyM[0], xyM[3] - xyM[1]), blow.options);
}

function splatPiece(
  tile: ShelterTile,
  blow: Blow,
  piece: Piece,
  phase: ShelterPhase,
  out: Float32Array,
): void {
  const { barrier, xyM, heightM } = piece;
  const { ray, options, readingHeightM, deficits } = blow;
  const table = deficitTable();
  const leafShare = phase.leafShare[barrier.leafClass];
  const extent = blow.extents[piece.group];
  const reachM = shelterReachM(extent.greatest - extent.least, options);
  const cosine = cosineOf(piece, blow);
  if (barrier.shape === 'line' && heightM[0] === heightM[1]) {
    const height = heightM[0];
    const porosity = metPorosity(barrier, leafShare, cosine, height);
    const factor = overPorousFactor(porosity) * youngStrength(height, readingHeightM, options);
    if (!(height > 0) || factor === 0) return;
    fillDeficits(table, tableRow(porosity, barrier.widthM / cosine / height), factor, deficits);
    for (let node = 0; node < DISTANCE_NODES; node++) {
      const distance = Math.abs(distanceOfNode(node)) * height;
      if (distance > reachM) deficits[node] *= reachM / distance;
    }
    splatLine(tile, ray, xyM, height, deficits, out);
    return;
  }
  const effects = {
    porosityAt: (height: number) => metPorosity(barrier, leafShare, cosine, height),
    strengthAt: (height: number) => youngStrength(height, readingHeightM, options),
    reachM,
  };
  const panels =
    barrier.shape === 'area'
      ? areaPanels(ray, xyM, heightM)
      : linePanels(ray, xyM, heightM, barrier.widthM / cosine);
  splatPanels(tile, ray, panels, effects, table, out);
}

function splatEnds(tile: ShelterTile, blow: Blow, phase: ShelterPhase, out: Float32Array): void {
  const { options, readingHeightM } = blow;
  for (const extent of blow.extents) {
    extent.ends.forEach(({ piece, vertex }, index) => {
      const heightM = piece.heightM[vertex];
      if (!(heightM > 0)) return;
      const leafShare = phase.leafShare[piece.barrier.leafClass];
      const porosity = metPorosity(piece.barrier, leafShare, cosineOf(piece, blow), heightM);
      splatEnd(
        tile,
        blow.ray,
        {
          xM: piece.xyM[2 * vertex],
          yM: piece.xyM[2 * vertex + 1],
          heightM,
          side: index === 0 ? -1 : 1,
          strength:
            (1 - porosity) *
            youngStrength(heightM, readingHeightM, options) *
            endBreadth(extent.greatest - extent.least, heightM, options),
        },
        out,
      );
    });
  }
}
