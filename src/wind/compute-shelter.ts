import { sampleGrid } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import { BadInputError } from '../units/bad-input.ts';
import { endBreadth, metPorosity, obliqueCosine, shelterReachM, youngStrength } from './barrier-effects.ts';
import { barrierPieces, type Piece } from './barrier-pieces.ts';
import { isInsideRing } from './footprint.ts';
import {
  GALE_NODES,
  type SeasonOfDirection,
  type ShelterDirection,
  shelterDirections,
} from './shelter-directions.ts';
import { type ShelterPhase, shelterSeasons } from './shelter-phases.ts';
import {
  acrossWind,
  alongWind,
  EDGE_M,
  type ShelterTile,
  shelterTiles,
  type WindRay,
  windRay,
} from './shelter-tile.ts';
import type { ShelterOptions, ShelterRequest, ShelterResult } from './shelter-types.ts';
import { splatEnd } from './splat-end.ts';
import { splatLine } from './splat-line.ts';
import { areaPanels, linePanel, splatPanel } from './splat-panel.ts';
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

/** The extent of a connected group across one wind, and its two outermost corners. */
interface GroupExtent {
  least: number;
  greatest: number;
  ends: { piece: Piece; vertex: number; alongM: number }[];
}

/** What is common to the pieces in one direction. */
interface Blow {
  readonly ray: WindRay;
  readonly extents: readonly GroupExtent[];
  readonly readingHeightM: number;
  readonly options: ShelterOptions;
  /** Scratch, DISTANCE_NODES long. */
  readonly deficits: Float32Array;
}

/** Sums over directions and leaf states for one season; deficits so that open ground stays exactly open. */
interface SeasonSums {
  /** Sum of speed weight * (1 - f), m/s, and of gale share less that of open ground. */
  readonly speedDeficit: Float64Array;
  readonly galeChange: Float64Array;
  openSpeed: number;
  openGale: number;
}

/**
 * Share of open wind and gale hours on every cell: for each direction and leaf state the smallest share that any
 * barrier leaves there (the published rule for several barriers), weighted by the wind's speed and frequency.
 * The rows of a band of the grid come out exactly as they do in the whole. Yields its progress about every 20 ms.
 * Throws BadInputError where a height or porosity is out of range.
 */
export function* computeShelter(request: ShelterRequest): Steps<ShelterResult> {
  const { scene, grid, readingHeightM, options } = request;
  checkRequest(request);
  const pieces = barrierPieces(scene.barriers, options.youngBelts ? readingHeightM : 0);
  const seasons = shelterSeasons(scene.leaf, scene.growingDay, scene.barriers);
  const directions = shelterDirections(scene.climate, scene.convergenceRad, request.galeMps);
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

function checkRequest({ scene, readingHeightM, galeMps }: ShelterRequest): void {
  if (!(readingHeightM >= 0)) {
    throw new BadInputError(`The reading height must be 0 m or more; found ${readingHeightM}.`);
  }
  if (!(galeMps > 0)) {
    throw new BadInputError(`The speed of a gale must be above 0 m/s; found ${galeMps}.`);
  }
  for (const barrier of scene.barriers) {
    for (const p of [barrier.porosityOn, barrier.porosityOff]) {
      if (!(p >= 0 && p <= 1)) {
        throw new BadInputError(`Optical porosity of thing ${barrier.thing} must be 0 to 1; found ${p}.`);
      }
    }
    if (barrier.heightM.length * 2 !== barrier.xyM.length) {
      throw new RangeError(
        `Thing ${barrier.thing} has ${barrier.xyM.length / 2} vertices and ${barrier.heightM.length} heights.`,
      );
    }
    if (!barrier.heightM.every((heightM) => heightM >= 0)) {
      throw new BadInputError(`Heights of thing ${barrier.thing} must be 0 m or more.`);
    }
  }
}

const changesWithLeaf = ({ barrier }: Piece, phases: readonly ShelterPhase[]): boolean =>
  barrier.porosityOn !== barrier.porosityOff &&
  phases.some(({ leafShare }) => leafShare[barrier.leafClass] !== phases[0].leafShare[barrier.leafClass]);

const phaseMatters = ({ growing, rest }: ShelterDirection, phase: ShelterPhase): boolean =>
  (growing !== null && phase.growingWeight > 0) || (rest !== null && phase.restWeight > 0);

/** Extents and outermost corners of every group; of corners in line with the wind the one it meets first. */
function groupExtents(pieces: readonly Piece[], ray: WindRay): GroupExtent[] {
  const extents: GroupExtent[] = [];
  for (const piece of pieces) {
    for (let vertex = 0; vertex < piece.heightM.length; vertex++) {
      const x = piece.xyM[2 * vertex];
      const y = piece.xyM[2 * vertex + 1];
      const s = acrossWind(ray, x, y);
      const corner = { piece, vertex, alongM: alongWind(ray, x, y) };
      const extent = extents[piece.group];
      if (!extent) {
        extents[piece.group] = { least: s, greatest: s, ends: [corner, corner] };
        continue;
      }
      const tiedLeast = Math.abs(s - extent.least) < EDGE_M && corner.alongM < extent.ends[0].alongM - EDGE_M;
      const tiedGreatest =
        Math.abs(s - extent.greatest) < EDGE_M && corner.alongM < extent.ends[1].alongM - EDGE_M;
      if (s < extent.least - EDGE_M || tiedLeast) extent.ends[0] = corner;
      if (s > extent.greatest + EDGE_M || tiedGreatest) extent.ends[1] = corner;
      extent.least = Math.min(extent.least, s);
      extent.greatest = Math.max(extent.greatest, s);
    }
  }
  return extents;
}

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
      : [linePanel(ray, xyM, heightM, barrier.widthM / cosine)];
  for (const panel of panels) if (panel) splatPanel(tile, ray, panel, effects, table, out);
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

const newSums = (cells: number): SeasonSums => ({
  speedDeficit: new Float64Array(cells),
  galeChange: new Float64Array(cells),
  openSpeed: 0,
  openGale: 0,
});

function addOpen(sums: SeasonSums, season: SeasonOfDirection | null): void {
  if (!season) return;
  sums.openSpeed += season.speedWeightMps;
  sums.openGale += season.frequency * season.galeShare[GALE_NODES];
}

function accumulate(
  sums: SeasonSums,
  season: SeasonOfDirection | null,
  phaseWeight: number,
  tile: ShelterTile,
  deficits: Float32Array,
): void {
  if (!season || phaseWeight === 0) return;
  const { speedDeficit, galeChange } = sums;
  const { galeShare } = season;
  const speedWeight = season.speedWeightMps * phaseWeight;
  const galeWeight = season.frequency * phaseWeight;
  const openGale = galeShare[GALE_NODES];
  for (let i = 0, cell = tile.firstCell; i < deficits.length; i++, cell++) {
    const deficit = deficits[i];
    if (deficit === 0) continue;
    speedDeficit[cell] += speedWeight * deficit;
    const v = (1 - deficit) * GALE_NODES;
    const node = v | 0;
    const chance = galeShare[node] + (v - node) * (galeShare[node + 1] - galeShare[node]);
    galeChange[cell] += galeWeight * (chance - openGale);
  }
}

/** Turns the sums into the three bands. Mutates `result`. */
function writeBands(
  { scene }: ShelterRequest,
  tiles: readonly ShelterTile[],
  [growing, rest]: SeasonSums[],
  [growingHours, restHours]: number[],
  { windShare, galeHours }: ShelterResult,
): void {
  const cells = growing.speedDeficit.length;
  const growingRun = growing.openSpeed * growingHours;
  const restRun = rest.openSpeed * restHours;
  const cut = (deficit: number, open: number): number => (open > 0 ? deficit / open : 0);
  const solids = scene.barriers.filter(
    (barrier) =>
      barrier.shape === 'area' && barrier.porosityOn === 0 && barrier.porosityOff === 0 && barrier.baseM <= 0,
  );
  for (const tile of tiles) {
    for (let row = 0, cell = tile.firstCell; row < tile.rows; row++) {
      const y = tile.rowYM[row];
      for (let column = 0; column < tile.columns; column++, cell++) {
        const x = tile.firstXM + column * tile.cellM;
        const missing =
          Number.isNaN(sampleGrid(scene.ground, x, y)) ||
          solids.some((solid) => isInsideRing(x, y, solid.xyM));
        if (missing) {
          for (let band = 0; band < 3; band++) {
            windShare[band * cells + cell] = Number.NaN;
            galeHours[band * cells + cell] = Number.NaN;
          }
          continue;
        }
        const cutGrowing = cut(growing.speedDeficit[cell], growing.openSpeed);
        const cutRest = cut(rest.speedDeficit[cell], rest.openSpeed);
        const run = growingRun + restRun;
        windShare[cell] = 1 - cutGrowing;
        windShare[cells + cell] = 1 - cutRest;
        windShare[2 * cells + cell] = 1 - (run > 0 ? (growingRun * cutGrowing + restRun * cutRest) / run : 0);
        const galeGrowing = Math.max(0, growing.openGale + growing.galeChange[cell]) * growingHours;
        const galeRest = Math.max(0, rest.openGale + rest.galeChange[cell]) * restHours;
        galeHours[cell] = galeGrowing;
        galeHours[cells + cell] = galeRest;
        galeHours[2 * cells + cell] = galeGrowing + galeRest;
      }
    }
  }
}
