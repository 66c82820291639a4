import type { ShadowReading } from './readings.ts';
import type { StakedThing } from './staked-thing.ts';

/** What each number that an explanation is free to choose costs, in squares (Akaike's is 2: few readings ask for more). */
export const PRICE = 4;
const ROUNDS = 12;

/** Changes to the model: height m, clock minutes, turn of the shadow rad, place east and north m. */
export interface Change {
  readonly heightM: number;
  readonly minutes: number;
  readonly turnRad: number;
  readonly eastM: number;
  readonly northM: number;
}
export const NONE: Change = { heightM: 0, minutes: 0, turnRad: 0, eastM: 0, northM: 0 };
type Knob = keyof Change;
const STEP: Record<Knob, number> = { heightM: 0.05, minutes: 0.2, turnRad: 1e-3, eastM: 0.05, northM: 0.05 };

/** One reading beside the model. */
export interface Seen {
  readonly reading: ShadowReading;
  readonly thing: StakedThing;
  readonly lengthM: number;
  readonly weight: number;
  /** Seen minus computed under a change, in metres beyond and to the right; null: no tip then. */
  readonly missUnder: (change: Change) => readonly [number, number] | null;
}

/** Weighted sum of squares under a change; infinite where a tip is lost. */
export function squares(seen: readonly Seen[], change: Change): number {
  let sum = 0;
  for (const { weight, missUnder } of seen) {
    const miss = missUnder(change);
    if (!miss) return Number.POSITIVE_INFINITY;
    sum += weight * (miss[0] ** 2 + miss[1] ** 2);
  }
  return sum;
}

interface Fit {
  readonly change: Change;
  readonly squares: number;
  /** One standard error of the first knob. */
  readonly error: number;
  readonly score: number;
}

/** The values of one or two knobs with the least sum of squares; steps that do not better it are halved. */
export function fitted(seen: readonly Seen[], knobs: readonly Knob[]): Fit {
  let change = NONE;
  let best = squares(seen, NONE);
  let error = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const normal = [0, 0, 0];
    const right = [0, 0];
    for (const { weight, missUnder } of seen) {
      const miss = missUnder(change);
      if (!miss) break;
      const slopes = knobs.map((knob) => {
        const moved = missUnder({ ...change, [knob]: change[knob] + STEP[knob] });
        return moved ? [(miss[0] - moved[0]) / STEP[knob], (miss[1] - moved[1]) / STEP[knob]] : [0, 0];
      });
      const second = slopes[1] ?? [0, 0];
      normal[0] += weight * (slopes[0][0] ** 2 + slopes[0][1] ** 2);
      normal[1] += weight * (slopes[0][0] * second[0] + slopes[0][1] * second[1]);
      normal[2] += weight * (second[0] ** 2 + second[1] ** 2);
      right[0] += weight * (slopes[0][0] * miss[0] + slopes[0][1] * miss[1]);
      right[1] += weight * (second[0] * miss[0] + second[1] * miss[1]);
    }
    if (normal[0] === 0) break;
    const det = knobs.length === 1 ? normal[0] : normal[0] * normal[2] - normal[1] ** 2;
    if (det === 0) break;
    const step =
      knobs.length === 1
        ? [right[0] / normal[0]]
        : [
            (right[0] * normal[2] - right[1] * normal[1]) / det,
            (right[1] * normal[0] - right[0] * normal[1]) / det,
          ];
    error = 1 / Math.sqrt(normal[0]);
    let share = 1;
    let bettered = false;
    for (let half = 0; half < 6 && !bettered; half++, share /= 2) {
      const next = { ...change };
      knobs.forEach((knob, i) => {
        (next as Record<Knob, number>)[knob] = change[knob] + share * step[i];
      });
      const sum = squares(seen, next);
      if (sum < best) {
        bettered = best - sum > 1e-9;
        change = next;
        best = sum;
      }
    }
    if (!bettered) break;
  }
  return { change, squares: best, error, score: best + PRICE * knobs.length };
}
