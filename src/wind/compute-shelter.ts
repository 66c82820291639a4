import type { Steps } from '../numeric/steps.ts';
import { barrierPieces } from './barrier-pieces.ts';
import { checkShelterRequest } from './check-request.ts';
import { LANE_BYTES, LANES } from './kernel/assembly/layout.ts';
import { layDirection } from './lay-direction.ts';
import { openGround } from './lay-pieces.ts';
import { looseTrees } from './loose-trees.ts';
import { reliefOnTile } from './relief-on-tile.ts';
import { type ShelterDirection, shelterDirections } from './shelter-directions.ts';
import { type ShelterPhase, shelterSeasons } from './shelter-phases.ts';
import { addOpen, addSeason, clearSums, takeSums, takeWeights, writeBands } from './shelter-sums.ts';
import { shelterTiles } from './shelter-tile.ts';
import type { ShelterRequest, ShelterResult } from './shelter-types.ts';

const PAUSE_MS = 20;
const GROWING = 0;
const REST = 1;

/**
 * Share of open wind and gale hours on every cell: for each direction and leaf state the smallest share that any
 * barrier or the scattered trees leave there (the published rule for several barriers), times what the shape of the
 * land makes of it, weighted by the wind's speed and frequency.
 * The rows of a band of the grid come out exactly as they do in the whole. Yields its progress about every 20 ms.
 * Throws BadInputError where a height or porosity is out of range.
 */
export function* computeShelter(request: ShelterRequest): Steps<ShelterResult> {
  const { scene, grid, readingHeightM, options } = request;
  checkShelterRequest(request);
  const pieces = barrierPieces(scene.barriers, options.youngBelts ? readingHeightM : 0);
  const acting = [...new Set(pieces.map(({ barrier }) => barrier))];
  const trees = options.scatteredTrees ? looseTrees(scene.crowns, acting, readingHeightM, options) : [];
  const seasons = shelterSeasons(scene.leaf, scene.growingDay, scene.barriers, trees);
  const directions = shelterDirections(
    scene.climate,
    scene.convergenceRad,
    request.galeMps,
    request.directionsASector,
  );
  const open = [
    { speedMps: 0, galeShare: 0 },
    { speedMps: 0, galeShare: 0 },
  ];
  for (const { growing, rest } of directions) {
    addOpen(open[GROWING], growing);
    addOpen(open[REST], rest);
  }
  const cells = grid.columns * grid.rows;
  const result = {
    grid,
    windShare: new Float32Array(3 * cells),
    galeHours: new Float32Array(3 * cells),
    directions: directions.length,
  };
  const tiles = shelterTiles(grid);
  const mostCells = Math.max(...tiles.map(({ columns, rows }) => columns * rows));
  const ground = openGround(request, pieces, mostCells);
  const { kernel } = ground;
  const sums = [takeSums(kernel, mostCells), takeSums(kernel, mostCells)];
  const weights = takeWeights(kernel);
  const scratch = options.chainedBelts ? kernel.take(mostCells * LANE_BYTES) : null;
  const rowY = kernel.take(8 * Math.max(...tiles.map(({ rows }) => rows)));
  let pausedMs = performance.now();
  for (let tileIndex = 0; tileIndex < tiles.length; tileIndex++) {
    const tile = tiles[tileIndex];
    kernel.doubles.set(tile.rowYM, rowY / 8);
    kernel.setTile(tile.columns, tile.rows, tile.cellM, tile.firstXM, rowY, ground.deficits);
    for (const season of sums) clearSums(kernel, season, mostCells);
    const relief = scene.relief && options.landform ? reliefOnTile(scene.relief, tile) : null;
    const around = { trees, relief, scratch };
    const nothing = pieces.length === 0 && trees.length === 0 && !relief;
    for (let d = 0; d < directions.length && !nothing; d++) {
      const direction = directions[d];
      for (const phases of sideBySide(direction, seasons.phases)) {
        for (const _ of layDirection({ ...ground, tile }, around, direction, phases)) {
          if (performance.now() - pausedMs <= PAUSE_MS) continue;
          yield (tileIndex + d / directions.length) / tiles.length;
          pausedMs = performance.now();
        }
        const { growing, rest } = direction;
        const growingWeights = phases.map(({ growingWeight }) => growingWeight);
        const restWeights = phases.map(({ restWeight }) => restWeight);
        addSeason(kernel, sums[GROWING], weights, growing, growingWeights);
        addSeason(kernel, sums[REST], weights, rest, restWeights);
      }
    }
    writeBands(request, kernel, tile, sums, open, [seasons.growingHours, seasons.restHours], result);
  }
  return result;
}

/** The leaf states that count in a direction, as many together as are worked out side by side. */
function sideBySide(
  { growing, rest }: ShelterDirection,
  phases: readonly ShelterPhase[],
): readonly (readonly ShelterPhase[])[] {
  const matter = phases.filter(
    ({ growingWeight, restWeight }) => (growing && growingWeight > 0) || (rest && restWeight > 0),
  );
  return Array.from({ length: Math.ceil(matter.length / LANES) }, (_, i) =>
    matter.slice(i * LANES, (i + 1) * LANES),
  );
}
