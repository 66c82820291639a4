/**
 * How the shape of the land changes the wind near the ground: faster over crests, slower in hollows and at the foot of
 * slopes. Linear potential flow over low hills gives the relative change of speed; near the ground it is about twice
 * that (Hunt 1980, the ground of the guidelines of Taylor & Lee 1984: 2 h/L over a ridge, 1.6 h/L over a round hill,
 * these two factors from memory). It is the same for wind from either side: no lee eddies, no valley winds.
 */
import { fourierSquare } from '../numeric/fft.ts';
import { type Grid, type GridSpec, sampleGrid } from '../numeric/grid.ts';

/** Near the ground the speed changes by so many times what potential flow says (Hunt 1980; Taylor & Lee 1984). */
const NEAR_GROUND_FACTOR = 2;
/** Our bounds: the guidelines hold for slopes to 0.3; steeper ground throws eddies, and is given no more than this. */
export const LEAST_RELIEF_SHARE = 0.5;
export const MOST_RELIEF_SHARE = 1.6;
/** Cells across the longer side of the ground, and of the square around it over which the land is led out to level. */
const CELLS_ACROSS = 64;
const SIZE = 2 * CELLS_ACROSS;
/** Land that departs from a plane by less than this share of its extent is even. */
const EVEN_SHARE = 1e-4;

/**
 * Relative change of speed at each cell by direction, as three coefficients: for a wind along the unit vector
 * (e, n) the share of the even land's wind is 1 + e² eastEast + 2 e n eastNorth + n² northNorth, within the bounds.
 */
export interface Relief extends GridSpec {
  readonly eastEast: Float32Array;
  readonly eastNorth: Float32Array;
  readonly northNorth: Float32Array;
}

/** Share of the even land's wind that a wind along (e, n), either way, has where the coefficients are these. */
export const reliefShare = (e: number, n: number, ee: number, en: number, nn: number): number =>
  Math.min(MOST_RELIEF_SHARE, Math.max(LEAST_RELIEF_SHARE, 1 + e * e * ee + 2 * e * n * en + n * n * nn));

/** Least-squares plane a + b x + c y through the samples that are known. */
function planeThrough(
  points: readonly (readonly [number, number, number])[],
): (x: number, y: number) => number {
  const n = points.length;
  const mean = (k: 0 | 1 | 2) => points.reduce((sum, p) => sum + p[k], 0) / n;
  const [mx, my, mz] = [mean(0), mean(1), mean(2)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (const [x, y, z] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
    xz += (x - mx) * (z - mz);
    yz += (y - my) * (z - mz);
  }
  const det = xx * yy - xy * xy;
  const b = det > 0 ? (xz * yy - yz * xy) / det : 0;
  const c = det > 0 ? (yz * xx - xz * xy) / det : 0;
  return (x, y) => mz + b * (x - mx) + c * (y - my);
}

/** 1 on the ground and its edge, falling to 0 by a cosine half the ground's length beyond. */
const ledOut = (beyond: number): number =>
  beyond >= 1 ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * Math.max(0, beyond));

/**
 * The relief of a ground raster, null where it is even (level, or one slope). Works on cells of 1/64 of the raster's
 * longer side, so that smaller shapes of the land do not count. Beyond the raster the land is led out to its mean slope.
 */
export function reliefOf(ground: Grid): Relief | null {
  const lengthM = Math.max(ground.columns, ground.rows) * ground.cellM;
  const cellM = lengthM / CELLS_ACROSS;
  const middleX = ground.westM + (ground.columns * ground.cellM) / 2;
  const middleY = ground.northM - (ground.rows * ground.cellM) / 2;
  const westM = middleX - lengthM;
  const northM = middleY + lengthM;
  const halfX = (ground.columns * ground.cellM) / 2;
  const halfY = (ground.rows * ground.cellM) / 2;
  const known: [number, number, number][] = [];
  const heights = new Float64Array(SIZE * SIZE);
  for (let r = 0, i = 0; r < SIZE; r++)
    for (let c = 0; c < SIZE; c++, i++) {
      const x = westM + (c + 0.5) * cellM;
      const y = northM - (r + 0.5) * cellM;
      // Beyond the raster its edge goes on.
      heights[i] = meanGround(ground, x, y, cellM);
      const onGround = Math.abs(x - middleX) <= halfX && Math.abs(y - middleY) <= halfY;
      if (onGround && !Number.isNaN(heights[i])) known.push([x, y, heights[i]]);
    }
  if (known.length < 3) return null;
  const plane = planeThrough(known);
  if (known.every(([x, y, z]) => Math.abs(z - plane(x, y)) < EVEN_SHARE * lengthM)) return null;
  for (let r = 0, i = 0; r < SIZE; r++)
    for (let c = 0; c < SIZE; c++, i++) {
      const x = westM + (c + 0.5) * cellM;
      const y = northM - (r + 0.5) * cellM;
      const onX = Math.min(middleX + halfX, Math.max(middleX - halfX, x));
      const onY = Math.min(middleY + halfY, Math.max(middleY - halfY, y));
      const departure = heights[i] - plane(onX, onY);
      const beyond = Math.hypot(x - onX, y - onY) / (lengthM / 2);
      heights[i] = Number.isNaN(departure) ? 0 : departure * ledOut(beyond);
    }
  return fromHeights(heights, cellM, { westM, northM });
}

/** Mean of the ground over a coarse cell: of its own cells, or of nine places where they are larger than a third of it. */
function meanGround(ground: Grid, x: number, y: number, cellM: number): number {
  const n = Math.max(1, Math.min(8, Math.round(cellM / ground.cellM)));
  let sum = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      sum += sampleGrid(ground, x + ((i + 0.5) / n - 0.5) * cellM, y + ((j + 0.5) / n - 0.5) * cellM);
  return sum / (n * n);
}

/** The three coefficients from heights on a periodic square: h(k) times k_e k_e / |k| and so on. */
function fromHeights(
  heights: Float64Array,
  cellM: number,
  corner: { readonly westM: number; readonly northM: number },
): Relief {
  const [hRe, hIm] = [heights, new Float64Array(SIZE * SIZE)];
  fourierSquare(hRe, hIm, SIZE, 'forward');
  // Two real fields share one transform back: the second as the imaginary part.
  const [aRe, aIm] = [new Float64Array(SIZE * SIZE), new Float64Array(SIZE * SIZE)];
  const [bRe, bIm] = [new Float64Array(SIZE * SIZE), new Float64Array(SIZE * SIZE)];
  const perIndex = (2 * Math.PI) / (SIZE * cellM);
  const wave = (index: number) => (index < SIZE / 2 ? index : index - SIZE) * perIndex;
  for (let r = 0, i = 0; r < SIZE; r++)
    for (let c = 0; c < SIZE; c++, i++) {
      const east = wave(c);
      const north = -wave(r);
      const k = Math.hypot(east, north);
      if (k === 0) continue;
      // The lone highest wave has no sign, so it has no mixed part.
      const mixed = c === SIZE / 2 || r === SIZE / 2 ? 0 : (east * north) / k;
      const [ee, nn] = [(east * east) / k, (north * north) / k];
      aRe[i] = ee * hRe[i] - nn * hIm[i];
      aIm[i] = ee * hIm[i] + nn * hRe[i];
      bRe[i] = mixed * hRe[i];
      bIm[i] = mixed * hIm[i];
    }
  fourierSquare(aRe, aIm, SIZE, 'backward');
  fourierSquare(bRe, bIm, SIZE, 'backward');
  return {
    columns: SIZE,
    rows: SIZE,
    cellM,
    ...corner,
    eastEast: Float32Array.from(aRe, (value) => NEAR_GROUND_FACTOR * value),
    eastNorth: Float32Array.from(bRe, (value) => NEAR_GROUND_FACTOR * value),
    northNorth: Float32Array.from(aIm, (value) => NEAR_GROUND_FACTOR * value),
  };
}
