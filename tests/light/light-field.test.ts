/** A field of light that is changed against one computed from scratch. */
import { expect, test } from 'vitest';
import { CROWN_STRIDE, type CrownSet } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE, type PrismSet } from '../../src/crowns/prism-set.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import { answerOf, canFollow, changeLightField, openLightField } from '../../src/light/light-field.ts';
import type { LightRequest, LightResult } from '../../src/light/light-types.ts';
import { STATED_YEAR_ERROR } from '../../src/light/stated-error.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { seededScene } from '../reference/seeded-scene.ts';

const EDITS = 1000;
/** Of open light, and of open hours. */
const MOST = 0.0005;
/** Seeds of random edits; one that ever failed stays. */
const SEEDS = [1, 2];

/** A small world: 10 x 10 m at 1 m, so that a thousand edits take seconds. */
function world(seed: number): LightRequest {
  const request = seededScene(seed, 14);
  return { ...request, grid: { ...request.grid, columns: 10, rows: 10, westM: 15, northM: 25 } };
}

interface Things {
  readonly crowns: CrownSet;
  readonly prisms: PrismSet;
}

/** Moves or resizes one crown, takes one away, adds one, or moves a corner's height or a piece of a belt or wall. */
function edited({ crowns, prisms }: Things, random: () => number): Things {
  const which = random();
  if (which < 0.6) {
    const i = Math.floor(random() * crowns.count);
    const values = crowns.values.slice();
    const from = i * CROWN_STRIDE;
    values[from] += 6 * (random() - 0.5);
    values[from + 1] += 6 * (random() - 0.5);
    values[from + 4] = Math.max(values[from + 3] + 0.5, values[from + 4] + 3 * (random() - 0.5));
    values[from + 5] = Math.max(0.3, values[from + 5] + (random() - 0.5));
    return { crowns: { ...crowns, values }, prisms };
  }
  if (which < 0.75 && crowns.count > 8)
    return { crowns: without(crowns, Math.floor(random() * crowns.count)), prisms };
  if (which < 0.85) return { crowns: withCopy(crowns, Math.floor(random() * crowns.count), random), prisms };
  const p = Math.floor(random() * prisms.count);
  const ringXY = prisms.ringXY.slice();
  const values = prisms.values.slice();
  const [dx, dy] = [3 * (random() - 0.5), 3 * (random() - 0.5)];
  for (let k = prisms.ringStart[p]; k < prisms.ringStart[p + 1]; k++) {
    ringXY[2 * k] += dx;
    ringXY[2 * k + 1] += dy;
  }
  values[p * PRISM_STRIDE + 4] = Math.max(
    values[p * PRISM_STRIDE + 3] + 0.5,
    values[p * PRISM_STRIDE + 4] + random() - 0.5,
  );
  return { crowns, prisms: { ...prisms, ringXY, values } };
}

function without({ count, values, form, leafClass, thing }: CrownSet, i: number): CrownSet {
  const kept = Array.from({ length: count }, (_, k) => k).filter((k) => k !== i);
  return {
    count: count - 1,
    values: Float64Array.from(
      kept.flatMap((k) => [...values.subarray(k * CROWN_STRIDE, (k + 1) * CROWN_STRIDE)]),
    ),
    form: Uint8Array.from(kept, (k) => form[k]),
    leafClass: Uint8Array.from(kept, (k) => leafClass[k]),
    thing: Uint16Array.from(kept, (k) => thing[k]),
  };
}

function withCopy(
  { count, values, form, leafClass, thing }: CrownSet,
  i: number,
  random: () => number,
): CrownSet {
  const added = values.slice(i * CROWN_STRIDE, (i + 1) * CROWN_STRIDE);
  added[0] += 8 * (random() - 0.5);
  added[1] += 8 * (random() - 0.5);
  return {
    count: count + 1,
    values: Float64Array.of(...values, ...added),
    form: Uint8Array.of(...form, form[i]),
    leafClass: Uint8Array.of(...leafClass, leafClass[i]),
    thing: Uint16Array.of(...thing, thing[i]),
  };
}

/** Largest differences of two results: share of light, and hours of a month as a share of the open ones. */
function differences(a: LightResult, b: LightResult): { share: number; hours: number; all: number[] } {
  let share = 0;
  const all: number[] = [];
  let hours = 0;
  const cells = a.openHours.length / 12;
  for (let i = 0; i < a.lightShare.length; i++) {
    if (Number.isNaN(b.lightShare[i])) expect(a.lightShare[i]).toBeNaN();
    else share = Math.max(share, Math.abs(a.lightShare[i] - b.lightShare[i]));
  }
  for (let cell = 0; cell < cells; cell++) {
    let difference = 0;
    let open = 0;
    for (let month = 0; month < 12; month++) {
      const at = month * cells + cell;
      if (Number.isNaN(b.directHours[at])) continue;
      difference += a.directHours[at] - b.directHours[at];
      open += b.openHours[at];
      hours = Math.max(hours, Math.abs(a.directHours[at] - b.directHours[at]) / b.openHours[at]);
    }
    if (open > 0) all.push(Math.abs(difference) / open);
  }
  return { share, hours, all };
}

const scratch = (request: LightRequest, things: Things) =>
  runToEnd(computeLight({ ...request, scene: { ...request.scene, ...things } }));

test.each(SEEDS)(
  'seed %d: after a thousand edits a field is as one computed from scratch',
  (seed) => {
    const request = world(seed);
    const random = seededRandom(seed * 104729);
    let things: Things = request.scene;
    let field = runToEnd(openLightField(request));
    let worst = { share: 0, hours: 0 };
    for (let edit = 1; edit <= EDITS; edit++) {
      things = edited(things, random);
      if (!canFollow(field, things.crowns, things.prisms))
        field = runToEnd(openLightField({ ...request, scene: { ...request.scene, ...things } }));
      // Most edits are seen on the way and then at rest; some are left for another thing before they are.
      const live = random() < 0.3;
      runToEnd(changeLightField(field, things.crowns, things.prisms, live));
      if (edit % 250) continue;
      runToEnd(changeLightField(field, things.crowns, things.prisms));
      const { share, hours } = differences(answerOf(field), scratch(request, things));
      worst = { share: Math.max(worst.share, share), hours: Math.max(worst.hours, hours) };
    }
    console.log(
      `seed ${seed}: share of light ${worst.share.toExponential(1)}, hours ${worst.hours.toExponential(1)}`,
    );
    expect(worst.share).toBeLessThan(MOST);
    expect(worst.hours).toBeLessThan(MOST);
  },
  300_000,
);

test('what is shown while a tree moves is within the stated error of what it becomes at rest', () => {
  const all: number[] = [];
  for (const seed of [1, 2, 3, 4]) {
    const request = world(seed);
    const random = seededRandom(seed);
    const field = runToEnd(openLightField(request));
    let things: Things = request.scene;
    for (let step = 0; step < 6; step++) {
      const values = things.crowns.values.slice();
      const from = seed * CROWN_STRIDE;
      values[from] = 15 + 10 * random();
      values[from + 1] = 10 + 10 * random();
      things = { ...things, crowns: { ...things.crowns, values } };
      runToEnd(changeLightField(field, things.crowns, things.prisms, true));
      const shown = answerOf(field);
      runToEnd(changeLightField(field, things.crowns, things.prisms));
      all.push(...differences(shown, answerOf(field)).all);
    }
  }
  all.sort((a, b) => a - b);
  const mean = all.reduce((a, b) => a + b) / all.length;
  const p99 = all[Math.ceil(0.99 * all.length) - 1];
  console.log(
    `jump at rest, share of the year's open hours: mean ${mean.toFixed(5)}, p99 ${p99.toFixed(5)}, most ${all.at(-1)?.toFixed(5)}`,
  );
  expect(mean).toBeLessThan(STATED_YEAR_ERROR.mean);
  expect(p99).toBeLessThan(STATED_YEAR_ERROR.p99);
});
