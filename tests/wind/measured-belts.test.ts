import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shelterCurvePicture } from '../../.tools/shelter-curve-picture.ts';
import {
  type Curve,
  functionReachH,
  MEASURED_BAND,
  MEASURED_CURVES,
  measuredReach,
} from '../../src/wind/measured-belts.ts';
import { frictionShare } from '../../src/wind/weps.ts';

const shareAt = (curve: Curve, distanceH: number): number => {
  const after = curve.findIndex(([at]) => at >= distanceH);
  const [x1, y1] = curve[after];
  if (x1 === distanceH) return y1;
  const [x0, y0] = curve[after - 1];
  return y0 + ((distanceH - x0) / (x1 - x0)) * (y1 - y0);
};

describe('what was measured behind belts', () => {
  it('lies within its own band', () => {
    for (const [distanceH, share] of [...MEASURED_CURVES.iowa, ...MEASURED_CURVES.moravia]) {
      expect(share).toBeGreaterThanOrEqual(shareAt(MEASURED_BAND.best, distanceH) - 1e-9);
      expect(share).toBeLessThanOrEqual(shareAt(MEASURED_BAND.weakest, distanceH) + 1e-9);
    }
  });

  it('reaches, behind a belt of 10 m, 51 to 126 m with half of the wind, 91 to 162 m with 30 % less, 80 to 250 m with 15 % less', () => {
    const reach = (cut: number) => {
      const { nearestH, farthestH } = measuredReach(cut);
      return [10 * nearestH, 10 * farthestH].map(Math.round);
    };
    expect(reach(0.5)).toEqual([51, 126]);
    expect(reach(0.3)).toEqual([91, 162]);
    expect(reach(0.15)).toEqual([80, 250]);
  });

  it('is met by the function where that says it is', () => {
    for (const [porosity, cut] of [
      [0.4, 0.5],
      [0.4, 0.3],
      [0.1, 0.15],
    ]) {
      const reachH = functionReachH(porosity, 0.3, cut) as number;
      expect(1 - frictionShare(porosity, reachH, 0.3)).toBeGreaterThanOrEqual(cut);
      expect(1 - frictionShare(porosity, reachH + 0.06, 0.3)).toBeLessThan(cut);
    }
    expect(functionReachH(0.95, 0.3, 0.5)).toBeNull();
  });

  it('stands in the README as it is drawn today (npm run pictures draws it anew)', () => {
    expect(readFileSync(new URL('../../.pictures/shelter-curve.svg', import.meta.url), 'utf8')).toBe(
      shelterCurvePicture(),
    );
  });
});
