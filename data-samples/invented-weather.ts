import { seededRandom } from '../src/numeric/random.ts';
import type { WindSector } from '../src/site/records/site.ts';
import { diffuseShare } from '../src/sun/diffuse-share.ts';
import { sunPosition } from '../src/sun/position.ts';
import { inventedWind } from './invented-wind.ts';

/** What the invented year is to look like. Local standard time; months from January. */
export interface InventedClimate {
  readonly place: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly zoneHours: number;
  readonly elevationM: number;
  readonly year: number;
  readonly meanTemperatureC: readonly number[];
  readonly sunshineShare: readonly number[];
  readonly sectors: readonly WindSector[];
  readonly calmShare: number;
  /** First and last month of the growing season, 0 = January. */
  readonly growingMonths: readonly [first: number, last: number];
}

const SOLAR_CONSTANT_WM2 = 1367;
/** Lumens a watt of daylight: enough for the file's illuminance columns, which nothing here reads. */
const LUMENS_A_WATT = 110;
const HOUR_MS = 3_600_000;

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Vapour pressure at saturation, kPa (FAO-56 eq. 11). */
const saturationKPa = (temperatureC: number): number =>
  0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3));

/** Value between the middles of months. */
function ofMonths(values: readonly number[], dayOfYear: number): number {
  const at = dayOfYear / (365 / 12) - 0.5;
  const month = Math.floor(at);
  const part = at - month;
  return values[(month + 12) % 12] * (1 - part) + values[(month + 1) % 12] * part;
}

function heading(climate: InventedClimate): string[] {
  const { place, latDeg, lonDeg, zoneHours, elevationM } = climate;
  return [
    `LOCATION,${place} (invented),-,-,seeded script,999999,${latDeg.toFixed(2)},${lonDeg.toFixed(2)},${zoneHours.toFixed(1)},${elevationM.toFixed(1)}`,
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,Invented weather of an invented place. Not a record of any station.',
    'COMMENTS 2,Made by data-samples/make.ts from a fixed seed.',
    'DATA PERIODS,1,1,Data,Friday, 1/ 1,12/31',
  ];
}

/**
 * A whole year in EnergyPlus weather format (EPW, EnergyPlus Auxiliary Programs, "EPW data dictionary"): 8 heading
 * lines and 8760 lines of 32 columns (the older layout, without albedo and rain), hour 1 ending at 01:00 standard time. Invented: clear sky by Haurwitz, cut by a
 * drifting cloudiness whose monthly mean is the given sunshine share; diffuse by Erbs; wind from the given sectors.
 */
export function inventedWeather(climate: InventedClimate, seed: number): string {
  const random = seededRandom(seed);
  const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const wind = inventedWind(climate, seed + 1);
  const lines = heading(climate);
  const startMs = Date.UTC(climate.year, 0, 1) - climate.zoneHours * HOUR_MS;
  let daySky = 0;
  let hourSky = 0;
  let warmth = 0;
  let pressureWave = 0;
  for (let hour = 0; hour < 8760; hour++) {
    const day = Math.floor(hour / 24);
    const clock = hour % 24;
    if (clock === 0) {
      daySky = 0.4 * daySky + 0.917 * gauss();
      warmth = 0.7 * warmth + 2.6 * gauss();
    }
    hourSky = 0.8 * hourSky + 0.6 * gauss();
    pressureWave = 0.985 * pressureWave + 0.17 * gauss();

    const share = ofMonths(climate.sunshineShare, day + 0.5);
    const sunshine = clamp(share + 0.42 * daySky + 0.18 * hourSky, 0, 1);
    const { altitudeRad } = sunPosition(startMs + (hour + 0.5) * HOUR_MS, climate.latDeg, climate.lonDeg);
    const sine = Math.max(0, Math.sin(altitudeRad));
    const beyondAir = SOLAR_CONSTANT_WM2 * (1 + 0.033 * Math.cos((2 * Math.PI * (day + 1)) / 365));
    const clear = sine > 0 ? 1098 * sine * Math.exp(-0.059 / sine) : 0;
    const global = Math.round(clear * (1 / 3 + (2 / 3) * sunshine));
    const diffuse = global > 0 ? Math.round(global * diffuseShare(global / (beyondAir * sine))) : 0;
    const direct =
      sine > 0.02 ? Math.min(Math.round((global - diffuse) / sine), Math.round(0.8 * beyondAir)) : 0;

    const swing = (2.2 + 3.4 * sunshine) * Math.cos(((clock - 14.5) / 12) * Math.PI);
    const temperature = ofMonths(climate.meanTemperatureC, day) + warmth + swing;
    const humidity = Math.round(clamp(86 - 22 * sunshine - 3.2 * swing, 32, 100));
    const vapour = Math.log((saturationKPa(temperature) * humidity) / 100 / 0.6108);
    const dewPoint = (237.3 * vapour) / (17.27 - vapour);
    const pressure = Math.round(101_325 - 12 * climate.elevationM + 900 * pressureWave);
    const cover = Math.round(10 * (1 - sunshine));
    const longwave = Math.round(
      5.67e-8 * (temperature + 273.15) ** 4 * (0.74 + 0.18 * (1 - sunshine) + 0.005 * dewPoint),
    );
    const lux = (wattsM2: number) => Math.round(wattsM2 * LUMENS_A_WATT);
    const date = new Date(Date.UTC(climate.year, 0, 1 + day));
    const { speedMps, fromDeg } = wind[hour];
    lines.push(
      [
        climate.year,
        date.getUTCMonth() + 1,
        date.getUTCDate(),
        clock + 1,
        60,
        '?',
        temperature.toFixed(1),
        Math.round(dewPoint) + 0,
        humidity,
        pressure,
        Math.round(beyondAir * sine),
        sine > 0 ? Math.round(beyondAir) : 0,
        longwave,
        global,
        direct,
        diffuse,
        lux(global),
        lux(direct),
        lux(diffuse),
        Math.round(lux(diffuse) / Math.PI / 10) * 10,
        fromDeg,
        speedMps.toFixed(1),
        cover,
        cover,
        // Not invented, marked missing: visibility, ceiling, present weather, water, haze, snow.
        9999,
        99999,
        9,
        999999999,
        999,
        '.999',
        999,
        99,
      ].join(','),
    );
  }
  return `${lines.join('\n')}\n`;
}
