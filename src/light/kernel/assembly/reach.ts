/** What of a tile a ray can shade: how far its cells, or the shadows in it, reach aside and along the ray. */
import { address, word } from './layers';
import {
  RAY_SX,
  RAY_SY,
  RAY_TAN,
  THINGS_ROUND,
  THINGS_ROUND_BYTES,
  TILE_CELL_M,
  TILE_COLUMNS,
  TILE_LOWEST_Z,
  TILE_NORTH,
  TILE_ROWS,
  TILE_ROW_M,
  TILE_WEST,
} from './layout';

/** What a ray sees of a box of cells, or of the shadows in it: how far it reaches aside and along, from the middle. */
export let middleAside: f64 = 0;
export let halfAside: f64 = 0;
export let middleAlong: f64 = 0;
export let halfAlong: f64 = 0;

export function lookAtTile(tile: usize, ray: usize): void {
  const sx = word(ray, RAY_SX);
  const sy = word(ray, RAY_SY);
  const halfX = 0.5 * word(tile, TILE_CELL_M) * word(tile, TILE_COLUMNS);
  const halfY = 0.5 * word(tile, TILE_ROW_M) * word(tile, TILE_ROWS);
  const x = word(tile, TILE_WEST) + halfX;
  const y = word(tile, TILE_NORTH) - halfY;
  middleAside = x * sy - y * sx;
  halfAside = abs(sy) * halfX + abs(sx) * halfY;
  middleAlong = x * sx + y * sy;
  halfAlong = abs(sx) * halfX + abs(sy) * halfY;
}

/** Narrows what is looked at to where a list of things can throw its shadows. */
export function lookAtShadows(tile: usize, ray: usize, things: usize, count: i32): void {
  const sx = <f32>word(ray, RAY_SX);
  const sy = <f32>word(ray, RAY_SY);
  const tan = <f32>word(ray, RAY_TAN);
  const lowest = <f32>word(tile, TILE_LOWEST_Z);
  const round = address(things, THINGS_ROUND);
  const list = address(things, THINGS_ROUND_BYTES);
  let left: f32 = f32.MAX_VALUE;
  let right: f32 = -f32.MAX_VALUE;
  let far: f32 = f32.MAX_VALUE;
  let near: f32 = -f32.MAX_VALUE;
  for (let k = 0; k < count; k++) {
    const at = round + 4 * k;
    const x = load<f32>(at);
    const y = load<f32>(at + list);
    const r = load<f32>(at + 2 * list);
    const aside = x * sy - y * sx;
    const along = x * sx + y * sy;
    left = min(left, aside - r);
    right = max(right, aside + r);
    near = max(near, along + r);
    far = min(far, along - r - max<f32>(0, load<f32>(at + 3 * list) - lowest) / tan);
  }
  const from = max<f64>(left, middleAside - halfAside);
  const to = min<f64>(right, middleAside + halfAside);
  middleAside = 0.5 * (from + to);
  halfAside = 0.5 * (to - from);
  const back = max<f64>(far, middleAlong - halfAlong);
  const front = min<f64>(near, middleAlong + halfAlong);
  middleAlong = 0.5 * (back + front);
  halfAlong = 0.5 * (front - back);
}
