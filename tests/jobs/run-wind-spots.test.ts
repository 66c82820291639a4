import { describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { runSpotPlan, runSpotScore } from '../../src/jobs/run-wind-spots.ts';
import { keptSpots } from '../../src/windspots/kept-spots.ts';
import { planSpots } from '../../src/windspots/plan-spots.ts';
import { scoreSpots } from '../../src/windspots/score-spots.ts';
import { keepMeters, writeDown } from '../../src/windspots/write-down.ts';
import { stakedSite } from '../stakes/staked-site.ts';
import { beltSite, wish } from '../windspots/belt-site.ts';

const site = beltSite();
const request = { site, of: 'b1', wish: wish({ heights: [2, 5, 9] }) };

/** The same site with readings of all three spots, of a belt that lets half the wind through. */
function readSite() {
  const written = writeDown(site.document, planSpots(site, 'b1', request.wish));
  const read = keptSpots(written, 'b1').reduce(
    (document, { id }, i) =>
      keepMeters(document, id, {
        date: '2027-07-10',
        time: null,
        openMps: 5,
        spotMps: 2.1 + 0.1 * i,
        minutes: 10,
        windFromDeg: 270,
      }),
    written,
  );
  return { site: stakedSite(read), of: 'b1', label: 'Long belt', kept: keptSpots(read, 'b1') };
}

describe('wind spots as jobs', () => {
  test('a worker has the same plan and the same score as the thread at hand', async () => {
    const runner = createNodeRunner(1);
    try {
      expect(await runSpotPlan(runner, request)).toEqual(planSpots(site, 'b1', request.wish));
      const asked = readSite();
      const score = await runSpotScore(runner, asked);
      expect(score).toEqual(scoreSpots(asked.site, 'b1', asked.label, asked.kept));
      expect(score.fits).not.toBeNull();
    } finally {
      runner.dispose();
    }
  }, 30_000);

  test('a wind without any good spot comes back over the wire as one sentence', async () => {
    const runner = createNodeRunner(1);
    try {
      await expect(
        runSpotPlan(runner, { ...request, wish: wish({ wind: { fromDeg: 0, speedMps: 6 } }) }),
      ).rejects.toMatchObject({
        code: 'bad-input',
        message: expect.stringContaining('No spot behind Long belt'),
      });
    } finally {
      runner.dispose();
    }
  }, 30_000);

  test('a plan that nobody wants any more is not worked out', async () => {
    const controller = new AbortController();
    controller.abort();
    await expect(
      runSpotPlan(createLocalRunner(), request, { signal: controller.signal }),
    ).rejects.toMatchObject({ code: 'cancelled' });
  });
});
