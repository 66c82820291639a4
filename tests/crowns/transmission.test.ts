import { expect, test } from 'vitest';
import { CROWN_FORMS } from '../../src/crowns/crown-set.ts';
import { crownPathM } from '../../src/crowns/path-length.ts';
import {
  depthPerMetreFromPorosity,
  leafAreaDensityForTransmittance,
  silhouetteTransmittance,
} from '../../src/crowns/transmission.ts';
import { seededRandom } from '../../src/numeric/random.ts';

function insideCrown(form: string, x: number, y: number, z: number, base: number, top: number, r: number) {
  if (z < base || z > top) return false;
  const rr = (x * x + y * y) / (r * r);
  const length = top - base;
  if (form === 'ellipsoid') return rr + ((z - (base + top) / 2) / (length / 2)) ** 2 <= 1;
  if (form === 'dome') return rr + ((z - base) / length) ** 2 <= 1;
  if (form === 'cone') return Math.sqrt(rr) <= (top - z) / length;
  return rr <= 1;
}

test.each(CROWN_FORMS)('the path through a %s agrees with walking along the ray', (form) => {
  const random = seededRandom(7);
  const stepM = 0.005;
  let hits = 0;
  for (let i = 0; i < 300; i++) {
    const base = random() * 3;
    const top = base + 0.5 + random() * 10;
    const r = 0.5 + random() * 4;
    const az = random() * 2 * Math.PI;
    const alt = 0.02 + random() * 1.55;
    const u = [Math.sin(az) * Math.cos(alt), Math.cos(az) * Math.cos(alt), Math.sin(alt)];
    const target = [(random() - 0.5) * 2 * r, (random() - 0.5) * 2 * r, base + random() * (top - base)];
    const back = random() * 12;
    const o = target.map((v, k) => v - back * u[k]);
    let walked = 0;
    for (let t = stepM / 2; t < 40; t += stepM)
      if (insideCrown(form, o[0] + t * u[0], o[1] + t * u[1], o[2] + t * u[2], base, top, r)) walked += stepM;
    const path = crownPathM(form, o[0], o[1], o[2], u[0], u[1], u[2], base, top, r);
    if (path > 0) hits++;
    expect(Math.abs(path - walked)).toBeLessThan(0.011);
  }
  expect(hits).toBeGreaterThan(150);
});

test.each(CROWN_FORMS)('a %s gets the leaf-area density that gives its transmittance back', (form) => {
  for (const transmittance of [0.11, 0.24, 0.5, 0.95]) {
    const density = leafAreaDensityForTransmittance(form, 14, 2, 4, transmittance);
    expect(silhouetteTransmittance(form, 14, 2, 4, density)).toBeCloseTo(transmittance, 6);
  }
});

test('a crown without volume or with an impossible transmittance is refused in a sentence', () => {
  expect(() => leafAreaDensityForTransmittance('dome', 2, 3, 1, 0.2)).toThrow(/no volume/);
  expect(() => leafAreaDensityForTransmittance('dome', 5, 1, 2, 0)).toThrow(/transmittance is 0/);
});

test('foliage seen across its width lets its porosity through', () => {
  expect(Math.exp(-depthPerMetreFromPorosity(0.4, 3) * 3)).toBeCloseTo(0.4, 12);
  expect(Math.exp(-depthPerMetreFromPorosity(0, 3) * 3)).toBeCloseTo(0.01, 12);
});
