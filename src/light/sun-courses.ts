/** The sun's course over the middle day of each month, as rays for the kernel. */
import { sunPosition } from '../sun/position.ts';
import { sunDay } from '../sun/sun-day.ts';
import { MIDDLE_DAY } from '../sun/sun-paths.ts';
import type { DayOfMonth } from './first-last-sun-types.ts';
import type { LightPlan, PlannedDirection } from './light-plan.ts';
import type { LightScene } from './light-types.ts';
import { rayDirection } from './shadow-tile.ts';

const MONTHS = 12;
const LONGEST_STEP_MIN = 5;
const MINUTE_MS = 60_000;

export interface SunCourse {
  readonly day: DayOfMonth;
  /** Where the steps begin; the sun stands in the middles of them. */
  readonly riseMin: number;
  readonly directions: readonly PlannedDirection[];
}

export function sunCourses(scene: LightScene): SunCourse[] {
  const { latDeg, lonDeg, convergenceRad, leaf, calendarYear, timeZone } = scene;
  return Array.from({ length: MONTHS }, (_, month): SunCourse => {
    const { day, midnightMs, riseMin, setMin } = sunDay(
      calendarYear,
      timeZone,
      latDeg,
      lonDeg,
      month,
      MIDDLE_DAY,
    );
    const upMin = riseMin === null || setMin === null ? 0 : setMin - riseMin;
    const steps = Math.ceil(upMin / LONGEST_STEP_MIN);
    const stepMin = steps === 0 ? 0 : upMin / steps;
    const phase = leaf.phaseOfDay[day];
    const leafShare = Float64Array.from(
      leaf.leafShare.subarray(phase * leaf.classCount, (phase + 1) * leaf.classCount),
    );
    const directions = Array.from({ length: steps }, (_, step) => {
      const minute = (riseMin ?? 0) + (step + 0.5) * stepMin;
      const { altitudeRad, azimuthRad } = sunPosition(midnightMs + minute * MINUTE_MS, latDeg, lonDeg);
      return {
        ray: rayDirection(altitudeRad, azimuthRad, convergenceRad),
        gridAzimuthRad: azimuthRad - convergenceRad,
        states: 1,
        leafShare,
        slots: [new Uint8Array(0)],
        weights: [new Float64Array(0)],
        growingHours: new Float64Array(1),
        growingMol: new Float64Array(1),
      };
    });
    return {
      day: { dayOfMonth: MIDDLE_DAY, midnightMs, riseMin, setMin, stepMin },
      riseMin: riseMin ?? 0,
      directions,
    };
  });
}

/** A plan of these rays alone: nothing is summed over the year, and the sky is left out. */
export const sunPlan = ({ leaf }: LightScene, courses: readonly SunCourse[]): LightPlan => ({
  classCount: leaf.classCount,
  sun: courses.flatMap(({ directions }) => directions),
  sky: [],
  skyGroups: 0,
  sunTotal: new Float64Array(0),
  diffuseMol: new Float64Array(0),
  openMol: new Float64Array(0),
  daysInMonth: new Uint8Array(MONTHS),
  growingDaysByMonth: new Float32Array(MONTHS),
});
