/**
 * The land's horizon for all cells of 0.81 ha: the sweep against the plain marcher over the same land, and how its time
 * grows with the cells of the ground; and rays through the woods of a surface raster against plain steps. One thread,
 * one run, seeded.
 */
import { canopyPathM, computeCanopyField } from '../../src/light/canopy-field.ts';
import { computeHorizons } from '../../src/light/horizon-sweep.ts';
import { type Grid, type GridSpec, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { gridOf, marchedCanopyM, marchedHorizon, rollingLand } from '../reference/plain-horizon.ts';
import { slope } from './slope.ts';

const FIELD: GridSpec = { columns: 180, rows: 180, cellM: 0.5, westM: -45, northM: 45 };
const READING_M = 0.1;
const RUNS = 3;
type Row = Record<string, string | number>;
/** Rasters of 2 m cells, so many to each side, all of whose cells are looked from. */
const EDGES = [100, 200, 400];
/** The field's surroundings: 1.2 km of 2 m cells each way. */
const AROUND = 600;
const MARCHED = 200;

export const title =
  'Horizons of 0.81 ha at 0.5 m over rolling land of 2 m cells, and rays through a surface raster';

export function bench(): Row[] {
  const around = gridOf(AROUND, AROUND, 2, rollingLand(1));
  const everywhere = EDGES.map((edge) => {
    const ground = gridOf(edge, edge, 2, rollingLand(1));
    return { ground, ...timeSweep(ground, ground) };
  });
  const exponent = slope(everywhere.map(({ ground, ms }) => [Math.log(ground.values.length), Math.log(ms)]));
  return [
    horizonRow('horizon from the field', around, timeSweep(around, FIELD)),
    ...everywhere.map((swept) => ({
      ...horizonRow('horizon from every cell', swept.ground, swept),
      'exponent of time in cells': Number(exponent.toFixed(2)),
    })),
    throughWoods(around),
  ];
}

interface Swept {
  readonly ms: number;
  readonly looks: number;
}

function timeSweep(ground: Grid, grid: GridSpec): Swept {
  const times: number[] = [];
  let looks = 0;
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    looks = runToEnd(computeHorizons(ground, grid, READING_M))?.tangent.length ?? 0;
    times.push(performance.now() - start);
  }
  return { ms: Math.min(...times), looks };
}

const horizonRow = (name: string, ground: Grid, { ms, looks }: Swept): Row =>
  timesRow(name, ground.values.length, looks, (1000 * ms) / looks, marchedUs(ground));

const timesRow = (name: string, cells: number, looks: number, us: number, plainUs: number): Row => ({
  'what is looked at': name,
  'raster cells': cells,
  looks,
  'best ms': Math.round((us * looks) / 1000),
  'µs a look': Number(us.toFixed(3)),
  'plain µs a look': Number(plainUs.toFixed(1)),
  'plain : ours': Math.round(plainUs / us),
});

function marchedUs(ground: Grid): number {
  const random = seededRandom(2);
  const start = performance.now();
  for (let k = 0; k < MARCHED; k++) {
    const [x, y] = inField(random);
    marchedHorizon(ground, x, y, sampleGrid(ground, x, y) + READING_M, 2 * Math.PI * random());
  }
  return (1000 * (performance.now() - start)) / MARCHED;
}

function throughWoods(ground: Grid): Row {
  const random = seededRandom(3);
  const canopy = gridOf(600, 600, 2, (x, y) => {
    const lump = Math.sin(x / 90 + 1) + Math.cos(y / 70) + Math.sin((x + y) / 40);
    return Math.max(Math.abs(x), Math.abs(y)) > 48 && lump > 0.3 ? 12 + 10 * random() : 0;
  });
  const field = computeCanopyField({ canopy, depthOnPerM: 0.25, depthOffPerM: 0.0875, leafClass: 1 }, ground);
  if (!field) throw new Error('no foliage');
  const rays = Array.from({ length: 200_000 }, () => {
    const [x, y] = inField(random);
    return { x, y, z: sampleGrid(ground, x, y) + READING_M, azimuth: 2 * Math.PI * random(), sine: random() };
  });
  const start = performance.now();
  let metres = 0;
  for (const { x, y, z, azimuth, sine } of rays)
    metres += canopyPathM(field, x, y, z, Math.sin(azimuth), Math.cos(azimuth), Math.tan(Math.asin(sine)));
  const us = (1000 * (performance.now() - start)) / rays.length;
  const plainStart = performance.now();
  for (const { x, y, z, azimuth, sine } of rays.slice(0, MARCHED))
    marchedCanopyM(canopy, ground, x, y, z, azimuth, Math.tan(Math.asin(sine)));
  const plainUs = (1000 * (performance.now() - plainStart)) / MARCHED;
  const name = `woods from the field, ${(metres / rays.length).toFixed(0)} m of foliage a ray`;
  return timesRow(name, canopy.values.length, rays.length, us, plainUs);
}

const inField = (random: () => number): [number, number] => [90 * random() - 45, 90 * random() - 45];
