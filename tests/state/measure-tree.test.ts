import { describe, expect, test } from 'vitest';
import { heightByAngle, heightByShadow, heightByStick } from '../../src/state/measure-tree.ts';
import { utcOfClock } from '../../src/sun/clock-time.ts';

describe('a tree measured from the ground', () => {
  test('a clock reading is taken in the site’s own zone, summer and winter', () => {
    expect(utcOfClock('2026-01-15', '12:00', 'America/Halifax')).toBe(Date.UTC(2026, 0, 15, 16));
    expect(utcOfClock('2026-07-15', '12:00', 'America/Halifax')).toBe(Date.UTC(2026, 6, 15, 15));
    expect(utcOfClock('2026-01-15', '12:00', 'Pacific/Auckland')).toBe(Date.UTC(2026, 0, 14, 23));
    expect(utcOfClock('', '12:00', 'America/Halifax')).toBeNull();
  });

  test('the shadow of a post under a sun at 45 degrees is as long as the post', () => {
    const lonLat = [-64.5, 45.1] as const;
    const at = (time: string) =>
      heightByShadow({
        shadowM: 10,
        date: '2026-06-21',
        time,
        timeZone: 'America/Halifax',
        lonLat,
        riseDeg: 0,
      });
    const nine = at('10:00');
    expect(nine.heightM).toBeCloseTo(10 * Math.tan((nine.sunAltitudeDeg * Math.PI) / 180), 6);
    expect(() => at('02:00')).toThrow(/not up/);
  });

  test('an angle and a stick', () => {
    expect(heightByAngle({ distanceM: 20, eyeHeightM: 1.6, topDeg: 45, footDeg: null })).toBeCloseTo(21.6, 9);
    expect(heightByStick({ distanceM: 30, stickM: 0.3, eyeToStickM: 0.6 })).toBeCloseTo(15, 9);
  });
});
