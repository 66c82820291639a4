/**
 * The scene the light benches measure on: a square field on rolling land, crowns of three leaf classes and four forms
 * strewn over it, and two belts along its west and north sides. Seeded. Its usual size (90 m, 200 crowns) is 0.81 ha
 * with 247 crowns to the hectare, whose crowns cover some 40 % of the ground.
 */
import { CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import type { LightRequest, LightScene } from '../../src/light/light-types.ts';
import { type Grid, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { seededScene } from '../reference/seeded-scene.ts';

interface OrchardOptions {
  readonly sideM: number;
  readonly cellM: number;
  readonly crowns: number;
  readonly seed: number;
}

export const SORREL_SIZED: OrchardOptions = { sideM: 90, cellM: 0.5, crowns: 200, seed: 3 };

/** Crowns to the hectare of the field of usual size. */
export const CROWNS_A_HA = 200 / 0.81;

export const sideOfHa = (ha: number): number => Math.round(Math.sqrt(ha * 10_000));

/** Land reaches this far beyond the field. */
const MARGIN_M = 55;
const GROUND_CELL_M = 2;
const PIECE_M = 9;

export function orchard({ sideM, cellM, crowns, seed }: OrchardOptions = SORREL_SIZED): LightRequest {
  const ground = rollingField(sideM);
  const along = Math.round(sideM / cellM);
  return {
    scene: {
      ...seededScene(1).scene,
      ground,
      crowns: crownsOver(ground, sideM, crowns, seed),
      prisms: twoBelts(ground, sideM, crowns),
    },
    grid: { columns: along, rows: along, cellM, westM: 0, northM: sideM },
    readingHeightM: 0.1,
  };
}

/** Falling to the south by 7 %, in waves of 4 m that run from south to north. */
function rollingField(sideM: number): Grid {
  const edge = Math.ceil((sideM + 2 * MARGIN_M) / GROUND_CELL_M);
  const values = new Float32Array(edge * edge);
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++) values[r * edge + c] = 50 + 0.14 * (edge - r) + 2 * Math.sin(c / 9);
  return {
    columns: edge,
    rows: edge,
    cellM: GROUND_CELL_M,
    westM: -MARGIN_M,
    northM: sideM + MARGIN_M,
    values,
  };
}

function crownsOver(ground: Grid, sideM: number, count: number, seed: number): LightScene['crowns'] {
  const random = seededRandom(seed);
  const values = new Float64Array(count * CROWN_STRIDE);
  for (let i = 0; i < count; i++) {
    const x = random() * sideM;
    const y = random() * sideM;
    const top = 4 + random() * 8;
    const on = 0.2 + random() * 0.3;
    values.set(
      [x, y, sampleGrid(ground, x, y), 0.2 * top, top, 0.28 * top, on, i % 3 === 0 ? on : 0.35 * on],
      i * CROWN_STRIDE,
    );
  }
  return {
    count,
    values,
    form: Uint8Array.from({ length: count }, (_, i) => i % 4),
    leafClass: Uint8Array.from({ length: count }, (_, i) => i % 3),
    thing: Uint16Array.from({ length: count }, (_, i) => i),
  };
}

/** Two belts in pieces of 9 m: an evergreen one 12 m high on the west, one 9 m high on the north that loses its leaves. */
function twoBelts(ground: Grid, sideM: number, firstThing: number): LightScene['prisms'] {
  const pieces = Math.ceil(sideM / PIECE_M);
  const count = 2 * pieces;
  const rings: number[] = [];
  const values = new Float64Array(count * PRISM_STRIDE);
  const depth = -Math.log(0.4) / 4;
  for (let k = 0; k < count; k++) {
    const s = PIECE_M * (k % pieces);
    const e = Math.min(sideM, s + PIECE_M);
    const west = k < pieces;
    rings.push(...(west ? [-4, s, 0, s, 0, e, -4, e] : [s, sideM, e, sideM, e, sideM + 4, s, sideM + 4]));
    const middle = (s + e) / 2;
    const z = west ? sampleGrid(ground, -2, middle) : sampleGrid(ground, middle, sideM + 2);
    values.set([z, 0, 0, 0.3, west ? 12 : 9, depth, west ? depth : 0.35 * depth], k * PRISM_STRIDE);
  }
  return {
    count,
    ringStart: Uint32Array.from({ length: count + 1 }, (_, p) => 4 * p),
    ringXY: Float64Array.from(rings),
    values,
    solid: new Uint8Array(count),
    leafClass: Uint8Array.from({ length: count }, (_, p) => (p < pieces ? 0 : 1)),
    thing: Uint16Array.from({ length: count }, (_, p) => firstThing + (p < pieces ? 0 : 1)),
  };
}
