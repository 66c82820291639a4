import { hoursFigure, seasonSentence, signsSeen, speedFigure } from '../sheets/wind-climate-words.ts';
import type { WindPageInput, WindPageSeason } from '../sheets/wind-page-input.ts';
import { fineDirectionWord } from '../units/compass.ts';
import type { WindRests } from '../wind/site-climate.ts';

/** The wind for a person to read. */
export function windText(page: WindPageInput, pdf: string | null): string {
  const { growing, rest, unit } = page;
  const lines = [
    `The wind at ${page.siteName}, in the open, 10 m above the ground`,
    `Growing season (${page.growingWords}): ${seasonSentence(growing, unit)}`,
    `Rest of the year: ${seasonSentence(rest, unit)}`,
    'Hours in which at least this is seen, growing season and rest of the year:',
    ...signsSeen(page.signs, [growing, rest]).map(
      ({ force, landSign, fromMps }) =>
        `  ${landSign.padEnd(42)} Beaufort ${String(force).padStart(2)}, ${speedFigure(fromMps, unit).padStart(4)} ${unit}: ${hoursFigure(growing.hoursFromForce[force]).padStart(6)} ${hoursFigure(rest.hoursFromForce[force]).padStart(6)}`,
    ),
    ...season('Growing season', growing, unit),
    ...season('Rest of the year', rest, unit),
    ...page.rests,
    ...page.assumed.map((clause) => `Assumed: ${clause}.`),
    ...(pdf ? [`Written: ${pdf}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

function season(name: string, { sectors }: WindPageSeason, unit: WindPageInput['unit']): string[] {
  return [
    `${name}, from the: % of hours, mean ${unit}, Weibull c and k`,
    ...sectors
      .filter(({ frequency }) => frequency > 0)
      .map(
        ({ fromDeg, frequency, meanSpeedMps, weibullScaleMps, weibullK }) =>
          `  ${fineDirectionWord(fromDeg).padEnd(16)} ${String(Math.round(fromDeg)).padStart(3)}°  ${(frequency * 100).toFixed(1).padStart(5)}  ${speedFigure(meanSpeedMps, unit).padStart(5)}  ${speedFigure(weibullScaleMps, unit).padStart(5)} ${weibullK.toFixed(2)}`,
      ),
  ];
}

/** The same as JSON, speeds in m/s at 10 m. */
export function windJson(page: WindPageInput, rests: WindRests): string {
  const seasonJson = ({ hours, calmShare, meanSpeedMps, sectors, hoursFromForce }: WindPageSeason) => ({
    hours,
    calmShare,
    meanSpeedMps,
    hoursFromBeaufort: hoursFromForce,
    sectors: sectors.map(({ fromDeg, frequency, meanSpeedMps: mean, weibullK, weibullScaleMps }) => ({
      fromDeg,
      frequency,
      meanSpeedMps: mean,
      weibullK,
      weibullScaleMps,
    })),
  });
  const answer = {
    site: page.siteName,
    heightM: 10,
    restsOn: rests.on,
    measured: rests.measured,
    moved: rests.site && { ...rests.site, factor: rests.factor },
    hoursOfFile: rests.hours,
    growing: seasonJson(page.growing),
    rest: seasonJson(page.rest),
    assumed: page.assumed,
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
