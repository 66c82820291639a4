/**
 * Light that follows a hand: the field of the light bench, kept by two worker threads; the time of one step from the
 * caller's request to the whole field's answer, while a tree or a belt's corner is dragged. The engine's own time is
 * taken apart: both threads' shares of a step one after the other, the slower of the two.
 */
import { CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { changeLight, holdInLight, keepLight, runLight } from '../../src/jobs/run-light.ts';
import { rowsInTurn } from '../../src/jobs/split-rows.ts';
import { changeLightField, openLightField, takeInHand } from '../../src/light/light-field.ts';
import type { LightRequest, LightResult, LightScene } from '../../src/light/light-types.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { orchard, SORREL_SIZED } from './orchard.ts';

const THREADS = 2;
const DRAGS = 8;
const STEPS = 25;
const STEP_M = 0.3;

export const title =
  'Live light: 0.81 ha at 0.5 m, 200 crowns, two belts, full year, direct and diffuse, two threads';

type Things = Pick<LightScene, 'crowns' | 'prisms'>;

export async function bench(): Promise<Record<string, string | number>[]> {
  const runner = createNodeRunner(THREADS);
  const request = orchard(SORREL_SIZED);
  await keepLight(runner, request);
  const rows: Record<string, string | number>[] = [];
  for (const [what, count, drag] of [
    ['one tree of 200', request.scene.crowns.count, treeStep],
    ['corner of a belt', 2, beltStep],
  ] as const)
    rows.push({ what, ...engineSteps(request, count, drag), ...(await drags(count, drag)) });
  runner.dispose();
  return rows;

  async function drags(count: number, step: typeof treeStep): Promise<Record<string, number>> {
    const random = seededRandom(17);
    const live: number[] = [];
    const first: number[] = [];
    const exact: number[] = [];
    for (let drag = 0; drag < DRAGS; drag++) {
      const { kept } = await keepLight(runner, request);
      const which = Math.floor(random() * count);
      let things: Things = request.scene;
      await holdInLight(runner, kept, thingOf(request, step, which));
      for (let k = 0; k < STEPS; k++) {
        things = step(things, which);
        const start = performance.now();
        await changeLight(runner, kept, { ...things, live: true });
        (k === 0 ? first : live).push(performance.now() - start);
      }
      const start = performance.now();
      await changeLight(runner, kept, { ...things, live: false });
      exact.push(performance.now() - start);
    }
    const scratch: number[] = [];
    for (let run = 0; run < 3; run++) {
      const start = performance.now();
      await runLight(runner, request);
      scratch.push(performance.now() - start);
    }
    const all = [...first, ...live];
    return {
      steps: all.length,
      'round trip median ms': at(all, 0.5),
      'round trip 95th ms': at(all, 0.95),
      'first step ms': at(first, 0.5),
      'exact at rest ms': at(exact, 0.5),
      'from scratch ms': at(scratch, 0.5),
    };
  }
}

function engineSteps(request: LightRequest, count: number, step: typeof treeStep): Record<string, number> {
  const fields = rowsInTurn(request.grid, THREADS).map((rows) =>
    runToEnd(openLightField({ ...request, rows })),
  );
  const random = seededRandom(17);
  const slowest: number[] = [];
  for (let drag = 0; drag < DRAGS; drag++) {
    const which = Math.floor(random() * count);
    let things: Things = request.scene;
    for (const field of fields) {
      runToEnd(changeLightField(field, things.crowns, things.prisms));
      runToEnd(takeInHand(field, thingOf(request, step, which)));
    }
    for (let k = 0; k < STEPS; k++) {
      things = step(things, which);
      const times = fields.map((field) => {
        const start = performance.now();
        runToEnd(changeLightField(field, things.crowns, things.prisms, true));
        return performance.now() - start;
      });
      slowest.push(Math.max(...times));
    }
  }
  const bytes = fields.reduce(
    (sum, { loaded, result }) => sum + loaded.kernel.bytes.byteLength + resultBytes(result),
    0,
  );
  return {
    'engine median ms': at(slowest, 0.5),
    'engine 95th ms': at(slowest, 0.95),
    'memory MB': Math.round(bytes / 2 ** 20),
  };
}

const resultBytes = (result: LightResult): number =>
  result.directHours.byteLength +
  result.openHours.byteLength +
  result.lightShare.byteLength +
  result.dailyLightIntegral.byteLength;

function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return Number(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1));
}

const thingOf = ({ scene }: LightRequest, step: unknown, which: number): number =>
  step === treeStep ? scene.crowns.thing[which] : scene.prisms.thing[which * 10];

function treeStep({ crowns, prisms }: Things, which: number): Things {
  const values = crowns.values.slice();
  values[which * CROWN_STRIDE] += values[which * CROWN_STRIDE] > 45 ? -STEP_M : STEP_M;
  return { crowns: { ...crowns, values }, prisms };
}

/** A corner at the belt's end moves: all its ten pieces turn a little. */
function beltStep({ crowns, prisms }: Things, belt: number): Things {
  const ringXY = prisms.ringXY.slice();
  const first = prisms.ringStart[10 * belt];
  const end = prisms.ringStart[10 * belt + 10];
  for (let k = first; k < end; k++) {
    const along = belt === 0 ? ringXY[2 * k + 1] : ringXY[2 * k];
    ringXY[2 * k + belt] += STEP_M * (along / 90);
  }
  return { crowns, prisms: { ...prisms, ringXY } };
}
