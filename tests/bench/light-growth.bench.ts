/**
 * How the cost of a year's light grows: the exponents of its time in cells, with so many crowns to the hectare and with
 * so many crowns in all, and in crowns on one field (fitted by least squares to the logarithms); the memory it takes;
 * and 20 ha with 5,000 crowns on two threads, told of as it goes and then stopped half-way. Times of one thread are
 * processor time, so that what else the machine does counts for little.
 *
 * Nothing ends a ray early: a crown costs the cells in its shadow the same however dark it is there already, so the
 * density of crowns changes only how many shadows lie on a cell.
 */
import { JobError } from '../../src/jobs/messages.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { runLight } from '../../src/jobs/run-light.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import { computeHorizons } from '../../src/light/horizon-sweep.ts';
import { EDGE } from '../../src/light/kernel/assembly/layout.ts';
import { loadTile } from '../../src/light/kernel/load.ts';
import { lightPlan, SKY_SLOTS } from '../../src/light/light-plan.ts';
import type { LightRequest, LightResult } from '../../src/light/light-types.ts';
import { loadScene } from '../../src/light/loaded-scene.ts';
import { ALL_ROWS, shadowTile } from '../../src/light/shadow-tile.ts';
import { bandWriter } from '../../src/light/write-bands.ts';
import { cellCount } from '../../src/numeric/grid.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { CROWNS_A_HA, orchard, sideOfHa } from './orchard.ts';
import { slope } from './slope.ts';

const AREAS_HA = [0.1, 0.3, 1, 3, 10, 20];
const CROWNS_IN_ALL = 250;
const CROWNS = [10, 30, 100, 300, 1000, 2500, 5000];
const MOST_HA = 20;
const MOST_CROWNS = 5000;
/** Cells of the field on which crowns are counted up. */
const FIELD_CELL_M = 2;
/** A measurement shorter than this is repeated. */
const LONG_ENOUGH_MS = 3000;
/** A cancel is to have ended the work after so long, whatever was being worked at. */
const CANCELLED_WITHIN_MS = 250;
type Row = Record<string, string | number>;

export const title =
  'Light: growth of time and memory with cells and crowns; 20 ha at 1 m with 5,000 crowns, told of and cancelled';

export async function bench(): Promise<Row[]> {
  runToEnd(computeLight(orchard({ sideM: 30, cellM: 1, crowns: 30, seed: 1 })));
  const byCells = AREAS_HA.map((ha) =>
    measured(orchard({ sideM: sideOfHa(ha), cellM: 1, crowns: Math.round(CROWNS_A_HA * ha), seed: 5 })),
  );
  const byCellsAlone = AREAS_HA.map((ha) =>
    measured(orchard({ sideM: sideOfHa(ha), cellM: 1, crowns: CROWNS_IN_ALL, seed: 5 })),
  );
  const byCrowns = CROWNS.map((crowns) =>
    measured(orchard({ sideM: sideOfHa(MOST_HA), cellM: FIELD_CELL_M, crowns, seed: 5 })),
  );
  const whole = orchard({ sideM: sideOfHa(MOST_HA), cellM: 1, crowns: MOST_CROWNS, seed: 5 });
  return [
    ...rows(`cells at 1 m, ${CROWNS_A_HA.toFixed(0)} crowns to the hectare`, byCells, 'cells'),
    ...rows(`cells at 1 m, ${CROWNS_IN_ALL} crowns in all`, byCellsAlone, 'cells'),
    ...rows(`crowns on ${MOST_HA} ha, cells of ${FIELD_CELL_M} m`, byCrowns, 'crowns'),
    memoryRow(whole),
    ...(await onTwoThreads(whole)),
  ];
}

interface Measured {
  readonly cells: number;
  readonly crowns: number;
  readonly ms: number;
}

/** Least processor time of one to five runs. */
function measured(request: LightRequest): Measured {
  let least = Number.POSITIVE_INFINITY;
  let spent = 0;
  for (let run = 0; run < 5 && spent < LONG_ENOUGH_MS; run++) {
    const start = process.cpuUsage();
    runToEnd(computeLight(request));
    const { user, system } = process.cpuUsage(start);
    const ms = (user + system) / 1000;
    least = Math.min(least, ms);
    spent += ms;
  }
  return { cells: cellCount(request.grid), crowns: request.scene.crowns.count, ms: least };
}

function rows(what: string, list: readonly Measured[], over: 'cells' | 'crowns'): Row[] {
  const exponent = (some: readonly Measured[]) =>
    slope(some.map((one) => [Math.log(one[over]), Math.log(one.ms)])).toFixed(2);
  const last = `${exponent(list)} over all, ${exponent(list.slice(-3))} over the last three`;
  return list.map(({ cells, crowns, ms }, k) => ({
    what,
    cells,
    crowns,
    s: Number((ms / 1000).toFixed(3)),
    'µs a cell': Number(((1000 * ms) / cells).toFixed(1)),
    'exponent of time': k === list.length - 1 ? last : '',
  }));
}

/** What one thread keeps: the kernel's memory, which grows with crowns alone, the horizons, and the result. */
function memoryRow(request: LightRequest): Row {
  const { scene, grid, readingHeightM } = request;
  const loaded = loadScene(scene, lightPlan(scene));
  bandWriter(loaded.kernel, loaded.plan);
  const tile = shadowTile(grid, ALL_ROWS, 0, 0, scene.ground, readingHeightM);
  loadTile(loaded.kernel, tile, SKY_SLOTS + loaded.plan.skyGroups, loaded.z0);
  const few = orchard({ sideM: 30, cellM: 1, crowns: 10, seed: 1 }).scene;
  const least = loadScene(few, lightPlan(few)).kernel.bytes.byteLength;
  const cells = cellCount(grid);
  const horizons = runToEnd(computeHorizons(scene.ground, grid, readingHeightM))?.tangent.byteLength ?? 0;
  const mostCrowns = loaded.kernel.bytes.byteLength;
  const text = `kernel ${megabytes(mostCrowns)} MB (${megabytes(least)} MB with 10 crowns) in tiles of ${EDGE} x ${EDGE}; result ${RESULT_BYTES} bytes a cell; horizons ${(horizons / cells).toFixed(1)} bytes a cell`;
  return { what: `memory of one thread: ${text}`, cells, crowns: scene.crowns.count };
}

/** Floats by month: hours, open hours, light; and the share, for the season too. */
const RESULT_BYTES = 4 * (12 + 12 + 12 + 13);

const bytesOf = (result: LightResult): number =>
  result.directHours.byteLength +
  result.openHours.byteLength +
  result.lightShare.byteLength +
  result.dailyLightIntegral.byteLength;

async function onTwoThreads(request: LightRequest): Promise<Row[]> {
  const cells = cellCount(request.grid);
  const crowns = request.scene.crowns.count;
  const runner = createNodeRunner(2);
  try {
    let told = 0;
    let last = Number.NaN;
    let longest = 0;
    const start = performance.now();
    const result = await runLight(runner, request, {
      onProgress: () => {
        const now = performance.now();
        if (told++ > 0) longest = Math.max(longest, now - last);
        last = now;
      },
    });
    const ms = performance.now() - start;
    if (bytesOf(result) !== RESULT_BYTES * cells) throw new Error(`${bytesOf(result)} bytes of result`);
    const rss = megabytes(process.memoryUsage().rss);
    const cancelMs = await cancelled(() => {
      const stop = new AbortController();
      const onProgress = (done: number) => {
        if (done > 0.3) stop.abort();
      };
      return { stop, work: runLight(runner, request, { signal: stop.signal, onProgress }) };
    });
    return [
      {
        what: `2 threads, by the clock: ${told} times told how far, at most ${longest.toFixed(0)} ms apart; the whole process holds ${rss} MB`,
        cells,
        crowns,
        s: Number((ms / 1000).toFixed(2)),
        'µs a cell': Number(((1000 * ms) / cells).toFixed(1)),
      },
      {
        what: `cancelled at 30 %: ended after ${cancelMs.toFixed(0)} ms (stated: ${CANCELLED_WITHIN_MS} ms)`,
        cells,
        crowns,
        s: Number((cancelMs / 1000).toFixed(3)),
      },
    ];
  } finally {
    runner.dispose();
  }
}

/** Milliseconds from the abort until the work has ended. */
async function cancelled(
  begin: () => { readonly stop: AbortController; readonly work: Promise<unknown> },
): Promise<number> {
  const { stop, work } = begin();
  let abortedMs = Number.NaN;
  stop.signal.addEventListener('abort', () => {
    abortedMs = performance.now();
  });
  try {
    await work;
  } catch (error) {
    if (error instanceof JobError && error.code === 'cancelled') return performance.now() - abortedMs;
    throw error;
  }
  throw new Error('it was not cancelled');
}

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);
