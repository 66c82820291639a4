import type { Spread } from '../batch/spread.ts';
import type { PatchSummary } from '../batch/summary.ts';
import type { SiteEvaporation } from '../scene/site-evaporation.ts';
import { EVAPORATION_RESTS_ON, reliefThanOpen, wrongWayWords } from '../sheets/evaporation-words.ts';

const mm = (depthMm: number): string => `${Math.round(depthMm)} mm`;
const percent = (spread: Spread | null | undefined): string =>
  spread ? `${Math.round(spread.mean * 100)} %` : 'no value';

/** One line an area: what share of open light it gets in the growing season, and its sun. */
export function lightTable(areas: readonly PatchSummary[]): string[] {
  return areas.map((area) => {
    const sun = area.directHoursYear
      ? `, ${Math.round(area.directHoursYear.mean)} hours of possible sun a year`
      : '';
    const enough =
      area.enoughLight === undefined
        ? ''
        : `, ${area.enoughLight ? 'enough light' : 'too dark'} (${Math.round(
            (area.areaShareWithEnoughLight ?? 0) * 100,
          )} % of its ground has enough)`;
    return `${area.name}: ${percent(area.lightShareSeason)} of open light in the growing season${sun}${enough}`;
  });
}

/** One line an area: by how much the wind is cut, and how much of its ground is in shelter. */
export function shelterTable(areas: readonly PatchSummary[]): string[] {
  const cut = (spread: Spread | null | undefined): string =>
    spread ? `${Math.round((1 - spread.mean) * 100)} %` : 'no value';
  return areas.map((area) => {
    const sheltered = area.shelteredAreaM2
      ? `; ${Math.round(area.shelteredAreaM2.below70)} m² of ${Math.round(area.areaM2)} m² have the year’s wind cut by more than 30 %`
      : '';
    const around =
      typeof area.horizonSumDeg === 'number' && Math.abs(area.horizonSumDeg) >= 0.5
        ? `; the horizon stands ${Math.round(area.horizonSumDeg)}° in all over eight directions`
        : '';
    const water = area.evaporationSeason;
    const evaporation = water
      ? `; grass gives off ${mm(water.hereMm)} in the season, ${reliefThanOpen(water.openMm, water.hereMm, mm)}`
      : '';
    return `${area.name}: wind cut by ${cut(area.windShareSeason)} in the growing season, ${cut(
      area.windShareYear,
    )} over the year${sheltered}${around}${evaporation}`;
  });
}

/** What the evaporation rests on, or what it lacks. */
export function evaporationLines({ curve, missing }: SiteEvaporation): string[] {
  if (!curve) return [missing];
  const wrongWay = wrongWayWords(curve.wrongWayDays, curve.days);
  return [...(wrongWay ? [wrongWay] : []), EVAPORATION_RESTS_ON];
}
