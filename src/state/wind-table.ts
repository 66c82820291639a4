import { windFromTable } from '../jobs/wind-words.ts';
import type { WindRecord } from '../site/records/site.ts';
import { BadInputError } from '../units/bad-input.ts';
import { COMPASS_POINTS } from '../units/compass.ts';
import type { AppState } from './model.ts';
import { roseOf, windOfSite } from './site-wind.ts';

/** Metres a second in one of each unit a table may be in; knots and miles by definition. */
const MPS_A_UNIT = { 'm/s': 1, 'km/h': 1 / 3.6, knots: 1852 / 3600, mph: 1609.344 / 3600 } as const;
export type TableUnit = keyof typeof MPS_A_UNIT;

type Read = { readonly wind: WindRecord; readonly notes: readonly string[] } | { readonly wrong: string };

/**
 * A typed table as the wind of a site, or the sentence that says what is wrong with it.
 * @param siteRoughnessM of the land around the site, where it is known and the table was measured elsewhere.
 */
export function windFromTyped(
  text: string,
  unit: TableUnit,
  heightM: number,
  siteRoughnessM: number | undefined,
): Read {
  try {
    const { sectors, calmShare, calmShareBySeason, notes } = windFromTable(text, MPS_A_UNIT[unit]);
    return {
      wind: {
        heightM,
        origin: 'table',
        ...(calmShareBySeason ? { calmShareBySeason: { ...calmShareBySeason } } : { calmShare }),
        ...(siteRoughnessM === undefined ? {} : { siteRoughnessM }),
        sectors: sectors.map((sector) => ({ ...sector })),
      },
      notes,
    };
  } catch (reason) {
    if (!(reason instanceof BadInputError)) throw reason;
    return { wrong: reason.message };
  }
}

/** The wind as it stands, in the lines of such a table: sixteen directions for each season, at 10 m over the site’s land. */
export function tableOfWind(
  state: Pick<AppState, 'document' | 'centre' | 'weather'>,
  unit: TableUnit,
): string {
  const answer = windOfSite(state);
  if ('wrong' in answer) return '';
  return (['growing', 'rest'] as const)
    .flatMap((season) => {
      const { sectors, calmShare } = roseOf(answer.wind, season);
      return [
        ...sectors.map(({ frequency, meanSpeedMps }, i) =>
          [
            COMPASS_POINTS[i].short,
            (frequency * 100).toFixed(1),
            (meanSpeedMps / MPS_A_UNIT[unit]).toFixed(1),
            season,
          ].join('\t'),
        ),
        `calm\t${(calmShare * 100).toFixed(1)}\t0\t${season}`,
      ];
    })
    .join('\n');
}
