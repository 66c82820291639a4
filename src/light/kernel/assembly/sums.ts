/** What the layers take out of the light, added to a tile's sums or to a result. */
import {
  address,
  forget,
  layerA,
  layerB,
  lossOf,
  one,
  touchedEnd,
  touchedFirst,
  touchedRow0,
  touchedRow1,
  word,
  zero,
} from './layers';
import { PLANE_BYTES, RAY_SLOTS, RAY_STATES, TILE_ROWS, TILE_STRIDE, TILE_SUMS } from './layout';

/** Adds what layer A takes, times what the ray counts for, to the tile's sums; empties the layer. */
export function addLosses(tile: usize, ray: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  const sums = address(tile, TILE_SUMS);
  let list = address(ray, RAY_SLOTS);
  for (let s = 0; s < states; s++) {
    const count = load<i32>(list);
    list += 4;
    const listEnd = list + 8 * count;
    const layer = layerA + s * PLANE_BYTES;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const rowEnd = load<i32>(touchedEnd + 4 * r);
      let i = 4 * (r * stride + (load<i32>(touchedFirst + 4 * r) & ~3));
      const end = 4 * (r * stride + rowEnd);
      if (count == 1) {
        const sum = sums + load<i32>(list);
        const weight = v128.load32_splat(list + 4);
        for (; i < end; i += 16) {
          const loss = lossOf(v128.load(layer + i));
          v128.store(layer + i, zero);
          v128.store(sum + i, f32x4.add(v128.load(sum + i), f32x4.mul(weight, loss)));
        }
        continue;
      }
      for (; i < end; i += 16) {
        const loss = lossOf(v128.load(layer + i));
        v128.store(layer + i, zero);
        for (let l = list; l < listEnd; l += 8) add(sums + load<i32>(l) + i, l + 4, loss);
      }
    }
    list = listEnd;
  }
  forget();
}

@inline
export function add(sum: usize, weight: usize, loss: v128): void {
  v128.store(sum, f32x4.add(v128.load(sum), f32x4.mul(v128.load32_splat(weight), loss)));
}

/** Adds `sign` times what layer B takes from the light that layer A leaves to the tile's sums; empties both. */
export function addChange(tile: usize, ray: usize, sign: f32): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  const sums = address(tile, TILE_SUMS);
  let list = address(ray, RAY_SLOTS);
  const signs = f32x4.splat(sign);
  for (let s = 0; s < states; s++) {
    const count = load<i32>(list);
    list += 4;
    const listEnd = list + 8 * count;
    const restLayer = layerA + s * PLANE_BYTES;
    const ownLayer = layerB + s * PLANE_BYTES;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const end = 4 * (r * stride + load<i32>(touchedEnd + 4 * r));
      for (let i = 4 * (r * stride + (load<i32>(touchedFirst + 4 * r) & ~3)); i < end; i += 16) {
        const rest = v128.load(restLayer + i);
        const own = v128.load(ownLayer + i);
        v128.store(restLayer + i, zero);
        v128.store(ownLayer + i, zero);
        const taken = f32x4.mul(f32x4.mul(f32x4.sub(one, lossOf(rest)), lossOf(own)), signs);
        for (let l = list; l < listEnd; l += 8) add(sums + load<i32>(l) + i, l + 4, taken);
      }
    }
    list = listEnd;
  }
  forget();
}

/** Writes what layer A takes in leaf state `state`, a float a cell (0 where nothing stands); the layer stays. */
export function lossesOf(tile: usize, state: i32, out: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const rows = <i32>word(tile, TILE_ROWS);
  memory.fill(out, 0, 4 * rows * stride);
  for (let r = touchedRow0; r < touchedRow1; r++) {
    const end = load<i32>(touchedEnd + 4 * r);
    for (let c = load<i32>(touchedFirst + 4 * r) & ~3; c < end; c += 4) {
      const i = 4 * (r * stride + c);
      v128.store(out + i, lossOf(v128.load(layerA + state * PLANE_BYTES + i)));
    }
  }
}

/**
 * Sum over the counted cells, by leaf state, of the light that would come back if what lies on layer B were taken out
 * of layer A, where it lies too. Empties layer B.
 * @param counted a float a cell, 1 or 0; @param out a double a state, added to
 */
export function sumGains(tile: usize, ray: usize, counted: usize, out: usize): void {
  const stride = <i32>word(tile, TILE_STRIDE);
  const states = <i32>word(ray, RAY_STATES);
  for (let s = 0; s < states; s++) {
    let total: f64 = 0;
    for (let r = touchedRow0; r < touchedRow1; r++) {
      const end = load<i32>(touchedEnd + 4 * r);
      let sum = zero;
      for (let c = load<i32>(touchedFirst + 4 * r) & ~3; c < end; c += 4) {
        const i = 4 * (r * stride + c);
        const own = v128.load(layerB + s * PLANE_BYTES + i);
        v128.store(layerB + s * PLANE_BYTES + i, zero);
        const rest = f32x4.pmax(zero, f32x4.sub(v128.load(layerA + s * PLANE_BYTES + i), own));
        const taken = f32x4.mul(f32x4.sub(one, lossOf(rest)), lossOf(own));
        sum = f32x4.add(sum, f32x4.mul(taken, v128.load(counted + i)));
      }
      total +=
        <f64>f32x4.extract_lane(sum, 0) +
        <f64>f32x4.extract_lane(sum, 1) +
        <f64>f32x4.extract_lane(sum, 2) +
        <f64>f32x4.extract_lane(sum, 3);
    }
    store<f64>(out + 8 * s, load<f64>(out + 8 * s) + total);
  }
  forget();
}

/**
 * clamp(bias - sum of coefficient * slot, 0, most), a float a cell of the tile.
 * @param terms `count` pairs of floats, slot and coefficient
 */
export function combine(
  tile: usize,
  terms: usize,
  count: i32,
  bias: f32,
  most: f32,
  out: usize,
): void {
  const cells = (<i32>word(tile, TILE_ROWS)) * (<i32>word(tile, TILE_STRIDE));
  const sums = address(tile, TILE_SUMS);
  const biases = f32x4.splat(bias);
  const mosts = f32x4.splat(most);
  for (let i = 0; i < 4 * cells; i += 16) {
    let value = biases;
    for (let k = 0; k < count; k++) {
      const sum = sums + (<i32>load<f32>(terms + 8 * k)) * PLANE_BYTES + i;
      value = f32x4.sub(value, f32x4.mul(v128.load32_splat(terms + 8 * k + 4), v128.load(sum)));
    }
    v128.store(out + i, f32x4.pmin(mosts, f32x4.pmax(zero, value)));
  }
}
