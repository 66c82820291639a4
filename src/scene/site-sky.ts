import type { SiteDocument } from '../site/document.ts';
import { siteDefaults } from '../site/records/site.ts';
import type { HourlyRadiation, SkyClimate } from '../sun/sky-climate.ts';
import { hasRadiation, hourlyRadiation } from '../sun/weather/hourly-radiation.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';

/** The last year asked of a weather file: a hand that drags a tree asks for it sixty times a second. */
const placed = new WeakMap<WeatherTable, { calendarYear: number; hourly: HourlyRadiation }>();

function hoursOf(weather: WeatherTable, calendarYear: number): HourlyRadiation {
  const known = placed.get(weather);
  if (known?.calendarYear === calendarYear) return known.hourly;
  const hourly = hourlyRadiation(weather, calendarYear);
  placed.set(weather, { calendarYear, hourly });
  return hourly;
}

/**
 * What the sky gives: the weather file's hours where it has radiation, else the site's sunshine shares, else the
 * default share, which is then named among what was assumed.
 */
export function siteSky(
  document: SiteDocument,
  weather: WeatherTable | null,
  calendarYear: number,
): { sky: SkyClimate; assumed: string[] } {
  const { sunshineShareByMonth } = document.site;
  const hourly = weather && hasRadiation(weather) ? hoursOf(weather, calendarYear) : null;
  const shares = sunshineShareByMonth ?? new Array<number>(12).fill(siteDefaults.sunshineShare);
  return {
    sky: { sunshineShareByMonth: Float32Array.from(shares), hourly, diffuseSky: 'isotropic' },
    assumed:
      hourly || sunshineShareByMonth
        ? []
        : [`sunshine ${siteDefaults.sunshineShare} of the possible hours in every month`],
  };
}
