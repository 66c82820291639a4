import { expect, test } from 'vitest';
import { prismPathM } from '../../src/crowns/prism-path.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { plainScene } from '../light/plain-scene.ts';
import { cutPrismM } from '../reference/reference-light.ts';

test('the path through a prism on sloping ground agrees with cutting its outline edge by edge', () => {
  const random = seededRandom(5);
  let hits = 0;
  for (let i = 0; i < 2000; i++) {
    // A convex ring of 3 to 8 corners on a circle.
    const corners = 3 + Math.floor(random() * 6);
    const angles = Array.from({ length: corners }, () => random() * 2 * Math.PI).sort((a, b) => a - b);
    const radius = 1 + random() * 8;
    const ring = angles.flatMap((a) => [radius * Math.cos(a), radius * Math.sin(a)]);
    const scene = plainScene({ pieces: [{ ring, base: random() * 2, top: 2 + random() * 10, depthOn: 1 }] });
    scene.prisms.values.set([random() * 5, random() - 0.5, random() - 0.5], 0);
    const azimuth = random() * 2 * Math.PI;
    const altitude = 0.02 + random() * 1.5;
    const u = [
      Math.sin(azimuth) * Math.cos(altitude),
      Math.cos(azimuth) * Math.cos(altitude),
      Math.sin(altitude),
    ] as const;
    const back = random() * 20;
    const o = [
      (random() - 0.5) * radius - back * u[0],
      (random() - 0.5) * radius - back * u[1],
      5 + random() * 8 - back * u[2],
    ] as const;
    const path = prismPathM(scene.prisms, 0, ...o, ...u);
    if (path > 0) hits++;
    expect(path).toBeCloseTo(cutPrismM(scene, 0, o, u), 6);
  }
  expect(hits).toBeGreaterThan(600);
});

test('straight up through a prism is its height above the ray', () => {
  const ring = [0, 0, 4, 0, 4, 4, 0, 4];
  const { prisms } = plainScene({ pieces: [{ ring, base: 1, top: 6 }] });
  expect(prismPathM(prisms, 0, 2, 2, 0, 0, 0, 1)).toBeCloseTo(5, 12);
  expect(prismPathM(prisms, 0, 2, 2, 3, 0, 0, 1)).toBeCloseTo(3, 12);
  expect(prismPathM(prisms, 0, 5, 2, 0, 0, 0, 1)).toBe(0);
});
