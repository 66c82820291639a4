import { along, centroid, length } from '@turf/turf';
import { type Frame, type LonLat, toLocal } from '../geo/frame.ts';
import { localBoxOf, widenedBox } from '../geo/local-box.ts';
import { cellAt, cellCount, type GridSpec, gridCovering } from '../numeric/grid.ts';
import type { FeatureId } from '../site/document.ts';
import type { Woody } from './growing-plants.ts';

/** Where the wind of one plant is read: the mean of these cells. */
interface WindReader {
  readonly id: FeatureId;
  readonly cells: readonly number[];
}

/** A grid on which the wind of some plants is read, and what acts there. */
export interface WindPlace {
  readonly grid: GridSpec;
  /** A belt or block stands in its own lee, and is left out of its own; null: all act. */
  readonly without: FeatureId | null;
  /** Whether single trees act. */
  readonly trees: boolean;
  readonly readers: readonly WindReader[];
}

/** Parts of a belt's length at which its wind is read. */
const BELT_PARTS = [1 / 6, 1 / 2, 5 / 6];
/** Cells along the longer side of a grid. Shelter changes over many metres; a plant's growth is no finer. */
const TREE_CELLS_ACROSS = 32;
const BELT_CELLS_ACROSS = 5;
const FINEST_CELL_M = 2;

/**
 * Where the wind of a site's plants is read. Single trees are read on one grid twice, with trees and without: what each
 * takes off its own wind is taken out after (`cutByOthers`).
 */
export function windPlaces(plants: readonly Woody[], frame: Frame): WindPlace[] {
  const places: WindPlace[] = [];
  const trees: (readonly [FeatureId, readonly LonLat[]])[] = [];
  for (const plant of plants) {
    const points = pointsOf(plant);
    if (plant.properties.kind === 'tree') trees.push([plant.id, points]);
    else
      places.push({
        ...cellsOf([[plant.id, points]], frame, BELT_CELLS_ACROSS),
        without: plant.id,
        trees: true,
      });
  }
  if (trees.length === 0) return places;
  const ofTrees = { ...cellsOf(trees, frame, TREE_CELLS_ACROSS), without: null };
  return [{ ...ofTrees, trees: true }, { ...ofTrees, trees: false }, ...places];
}

function pointsOf({ geometry }: Woody): LonLat[] {
  const lonLat = ([lon, lat]: readonly number[]): LonLat => [lon, lat];
  if (geometry.type === 'Point') return [lonLat(geometry.coordinates)];
  if (geometry.type === 'Polygon') return [lonLat(centroid(geometry).geometry.coordinates)];
  const line = { type: 'Feature' as const, properties: {}, geometry };
  return BELT_PARTS.map((part) => lonLat(along(line, part * length(line)).geometry.coordinates));
}

function cellsOf(
  plants: readonly (readonly [FeatureId, readonly LonLat[]])[],
  frame: Frame,
  across: number,
): Pick<WindPlace, 'grid' | 'readers'> {
  // Every plant has a point.
  const box = localBoxOf(
    frame,
    plants.flatMap(([, points]) => points),
  )!;
  const cellM = Math.max(FINEST_CELL_M, Math.max(box.east - box.west, box.north - box.south) / across);
  const grid = gridCovering(widenedBox(box, cellM / 2), cellM);
  const cellOf = (point: LonLat): number => {
    const [xM, yM] = toLocal(frame, point);
    return cellAt(grid, xM, yM);
  };
  return { grid, readers: plants.map(([id, points]) => ({ id, cells: points.map(cellOf) })) };
}

/** Share by which the growing season's wind is cut at each plant. @param windShare first band: the growing season. */
export function cutAtPlants({ grid, readers }: WindPlace, windShare: Float32Array): Map<FeatureId, number> {
  if (windShare.length < cellCount(grid)) throw new Error('the wind is not of this grid');
  return new Map(
    readers.map(({ id, cells }) => {
      const known = cells.map((cell) => windShare[cell]).filter((share) => !Number.isNaN(share));
      const open = known.length > 0 ? known.reduce((sum, share) => sum + share, 0) / known.length : 1;
      return [id, 1 - open];
    }),
  );
}

/**
 * Share by which a tree's wind is cut by all others. Where belts and walls cut it more than all trees do, they alone
 * count (the smallest share wins); otherwise what the tree takes off by itself is taken out, a little too much where
 * many stand close, for drags do not quite add.
 * @param withTrees cut by everything, the tree among it. @param withoutTrees by belts, walls and land alone.
 */
export const cutByOthers = (withTrees: number, withoutTrees: number, own: number): number =>
  Math.max(withoutTrees, withTrees - own);
