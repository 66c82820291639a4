import { expect, test } from 'vitest';
import { firstYearBetween, type YearShare } from '../../src/jobs/first-year.ts';
import { seededRandom } from '../../src/numeric/random.ts';

/** Looks at a curve by year, and counts. */
async function searched(shares: readonly number[], wanted: number) {
  let looks = 0;
  const at = (year: number): YearShare => ({ year, share: shares[year] });
  const found = await firstYearBetween(wanted, at(0), at(shares.length - 1), async (year) => {
    looks++;
    return at(year);
  });
  return { year: found.year, looks };
}

test('of a share that grows, however it does, the first year is found in a few looks', async () => {
  const random = seededRandom(11);
  const most = 2 * Math.ceil(Math.log2(40));
  for (let curve = 0; curve < 500; curve++) {
    // From steps of one kind to a single jump.
    const power = 1 + 30 * random();
    const steps = Array.from({ length: 40 }, () => random() ** power);
    const whole = steps.reduce((sum, step) => sum + step, 0);
    const shares = [0];
    for (const step of steps) shares.push(shares[shares.length - 1] + step / whole);
    shares[40] = 1;
    const { year, looks } = await searched(shares, 0.5);
    expect(year).toBe(shares.findIndex((share) => share >= 0.5));
    expect(looks).toBeLessThanOrEqual(most);
  }
});

test('a share that creeps just below and then jumps does not take a look at every year', async () => {
  const shares = Array.from({ length: 41 }, (_, year) => (year < 35 ? 0.49 : 1));
  const { year, looks } = await searched(shares, 0.5);
  expect(year).toBe(35);
  expect(looks).toBeLessThanOrEqual(12);
});
