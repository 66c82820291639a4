/**
 * The light engine against the plain reference, in one run and on one thread: a field of 0.81 ha at 0.5 m on rolling
 * land, 200 crowns in three leaf classes, two belts; a full year, direct and diffuse. Seeded.
 */
import { CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import type { LightRequest } from '../../src/light/light-types.ts';
import { type Grid, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { referenceCell } from '../reference/reference-light.ts';
import { plainYear } from '../reference/reference-sun.ts';
import { seededScene } from '../reference/seeded-scene.ts';

const SIZE_M = 90;
const CROWNS = 200;
const REFERENCE_CELLS = 12;
const RUNS = 3;

export const title =
  'Light: 0.81 ha at 0.5 m, 200 crowns, two belts, full year, direct and diffuse, one thread';

export function bench(): Record<string, string | number>[] {
  const request = orchard();
  const { grid } = request;
  const cells = grid.columns * grid.rows;
  const times: number[] = [];
  let directions = 0;
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    directions = runToEnd(computeLight(request)).directions;
    times.push(performance.now() - start);
  }
  const engineMs = Math.min(...times);

  const year = plainYear(request.scene);
  const random = seededRandom(11);
  const start = performance.now();
  for (let k = 0; k < REFERENCE_CELLS; k++)
    referenceCell(request.scene, year, random() * SIZE_M, random() * SIZE_M, request.readingHeightM);
  const referenceMsACell = (performance.now() - start) / REFERENCE_CELLS;

  const meanMs = times.reduce((a, b) => a + b, 0) / RUNS;
  return [
    {
      cells,
      'sun directions': directions,
      'engine best s': Number((engineMs / 1000).toFixed(2)),
      'engine mean s': Number((meanMs / 1000).toFixed(2)),
      'engine cells/s': Math.round(cells / (engineMs / 1000)),
      'reference cells/s': Number((1000 / referenceMsACell).toFixed(2)),
      'engine : reference': Math.round(referenceMsACell / (engineMs / cells)),
    },
  ];
}

function orchard(): LightRequest {
  const base = seededScene(1);
  const random = seededRandom(3);
  const edge = 100;
  const ground: Grid = {
    columns: edge,
    rows: edge,
    cellM: 2,
    westM: -55,
    northM: 145,
    values: new Float32Array(edge * edge),
  };
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++) ground.values[r * edge + c] = 50 + 0.14 * (edge - r) + 2 * Math.sin(c / 9);
  const values = new Float64Array(CROWNS * CROWN_STRIDE);
  for (let i = 0; i < CROWNS; i++) {
    const x = random() * SIZE_M;
    const y = random() * SIZE_M;
    const top = 4 + random() * 8;
    const on = 0.2 + random() * 0.3;
    values.set(
      [x, y, sampleGrid(ground, x, y), 0.2 * top, top, 0.28 * top, on, i % 3 === 0 ? on : 0.35 * on],
      i * CROWN_STRIDE,
    );
  }
  // Two belts along the west and north edges, in pieces of 9 m.
  const rings: number[] = [];
  const prisms = new Float64Array(20 * PRISM_STRIDE);
  const depth = -Math.log(0.4) / 4;
  for (let k = 0; k < 20; k++) {
    const s = 9 * (k % 10);
    const west = k < 10;
    rings.push(...(west ? [-4, s, 0, s, 0, s + 9, -4, s + 9] : [s, 90, s + 9, 90, s + 9, 94, s, 94]));
    const z = west ? sampleGrid(ground, -2, s + 4.5) : sampleGrid(ground, s + 4.5, 92);
    prisms.set([z, 0, 0, 0.3, west ? 12 : 9, depth, west ? depth : 0.35 * depth], k * PRISM_STRIDE);
  }
  return {
    scene: {
      ...base.scene,
      ground,
      crowns: {
        count: CROWNS,
        values,
        form: Uint8Array.from({ length: CROWNS }, (_, i) => i % 4),
        leafClass: Uint8Array.from({ length: CROWNS }, (_, i) => i % 3),
        thing: Uint16Array.from({ length: CROWNS }, (_, i) => i),
      },
      prisms: {
        count: 20,
        ringStart: Uint32Array.from({ length: 21 }, (_, p) => 4 * p),
        ringXY: Float64Array.from(rings),
        values: prisms,
        solid: new Uint8Array(20),
        leafClass: Uint8Array.from({ length: 20 }, (_, p) => (p < 10 ? 0 : 1)),
        thing: Uint16Array.from({ length: 20 }, (_, p) => CROWNS + (p < 10 ? 0 : 1)),
      },
    },
    grid: { columns: 2 * SIZE_M, rows: 2 * SIZE_M, cellM: 0.5, westM: 0, northM: SIZE_M },
    readingHeightM: 0.1,
  };
}
