import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { LonLat } from '../../../src/geo/frame.ts';
import { azimuthDeg, distanceM } from '../../../src/geo/geodesic.ts';
import { planStakes } from '../../../src/stakes/plan-stakes.ts';
import { degToRad, radToDeg } from '../../../src/units/angle.ts';
import { documentOf, POINTED, stakedSite, thing } from '../../stakes/staked-site.ts';

const rows = readFileSync(new URL('../sun/fixtures/sun-positions.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));

/** The altitude at which an airless altitude is seen, degrees: Bennett's formula for the way back, solved by rounds. */
function seenDeg(airlessDeg: number): number {
  let seen = airlessDeg;
  for (let round = 0; round < 20; round++) {
    const minutes = 1 / Math.tan(degToRad(seen + 7.31 / (seen + 4.4)));
    seen = airlessDeg + minutes / 60;
  }
  return seen;
}

const HEIGHT_M = 10;
/** Promised for the sun's place (0.02 degrees), plus Bennett's own 0.002. */
const SUN_DEG = 0.022;
const LOWEST_DEG = 5;

// The whole way from a site file to a place on the ground, against the three independent ephemerides: a pointed tree
// of 10 m on level ground at each place and instant of the table, its clock kept in UTC.
test('stakes stand where three independent ephemerides put the tip of a ten-metre shadow', () => {
  let worstAlong = 0;
  let worstAside = 0;
  let count = 0;
  for (const [utc, latText, lonText, airless, azimuth] of rows) {
    if (Number(airless) < LOWEST_DEG || !utc.endsWith(':00Z')) continue;
    const here: LonLat = [Number(lonText), Number(latText)];
    const site = stakedSite(
      documentOf([thing('t1', 'Point', here, POINTED)], {
        centre: here,
        timeZone: 'UTC',
        baseYear: Number(utc.slice(0, 4)),
      }),
    );
    const { stakes } = planStakes(site, 't1', {
      date: utc.slice(0, 10),
      times: [utc.slice(11, 16)],
      longestM: 400,
      line: null,
    });
    const altitude = degToRad(seenDeg(Number(airless)));
    const lengthM = HEIGHT_M / Math.tan(altitude);
    const foundM = distanceM(here, stakes[0].lonLat);
    const turn = ((azimuthDeg(here, stakes[0].lonLat) - Number(azimuth) - 180 + 540) % 360) - 180;
    const asideM = foundM * degToRad(Math.abs(turn));
    // What a sun that is off by da makes of the shadow: along it h da / sin² a, aside h da / sin a.
    const alongLimitM = (HEIGHT_M * degToRad(SUN_DEG)) / Math.sin(altitude) ** 2 + 0.002;
    const asideLimitM = (HEIGHT_M * degToRad(SUN_DEG)) / Math.sin(altitude) + 0.002;
    expect(Math.abs(foundM - lengthM), `${utc} length`).toBeLessThan(alongLimitM);
    expect(asideM, `${utc} aside`).toBeLessThan(asideLimitM);
    worstAlong = Math.max(worstAlong, Math.abs(foundM - lengthM) / lengthM);
    worstAside = Math.max(worstAside, radToDeg(asideM / foundM));
    count++;
  }
  expect(count).toBe(60);
  console.log(
    `${count} stakes: length within ${(100 * worstAlong).toFixed(2)} %, direction within ${worstAside.toFixed(3)} degrees`,
  );
});
