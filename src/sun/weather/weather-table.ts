/**
 * Hours of weather, whatever file they came from. All arrays have one value an hour, in the file's order.
 * Missing values are NaN.
 */
export interface WeatherTable {
  readonly format: 'EPW' | 'TMY3' | 'CSV';
  /** Station or place as the file names it; empty where it does not. */
  readonly place: string;
  /** North and east positive, degrees, WGS 84; null where the file does not say. */
  readonly latDeg: number | null;
  readonly lonDeg: number | null;
  /** The file's standard time less UTC, hours. */
  readonly utcOffsetHours: number;
  /** Height above ground at which the wind was measured, metres. */
  readonly windHeightM: number;
  readonly hourCount: number;
  /** Calendar year of each hour as it was measured; 0 where the file gives none. */
  readonly year: Uint16Array;
  /** Why the hours are no real years but a typical one, as a clause; null: they are real. */
  readonly typical: string | null;
  /** 1 to 12, 1 to 31, and the hour of that day that the stamp ends, 1 to 24, in the file's standard time. */
  readonly month: Uint8Array;
  readonly day: Uint8Array;
  readonly hourEnd: Uint8Array;
  /** Irradiation on the horizontal, mean over the hour, W m-2. */
  readonly globalWm2: Float32Array;
  readonly diffuseWm2: Float32Array;
  /** Where the wind comes from, degrees clockwise from true north. */
  readonly windFromDeg: Float32Array;
  readonly windSpeedMps: Float32Array;
  readonly temperatureC: Float32Array;
  readonly dewPointC: Float32Array;
}

/** Height of a wind mast where the file does not say: the standard of the World Meteorological Organization. */
const STANDARD_WIND_HEIGHT_M = 10;

/** One hour as a reader found it. */
export interface WeatherHour {
  /** Absent where the file gives none. */
  readonly year?: number;
  readonly month: number;
  readonly day: number;
  readonly hourEnd: number;
  readonly globalWm2: number;
  readonly diffuseWm2: number;
  readonly windFromDeg: number;
  readonly windSpeedMps: number;
  readonly temperatureC: number;
  /** Absent where the format has none. */
  readonly dewPointC?: number;
}

/** Gathers hours into columns. */
export function weatherTable(
  head: Pick<WeatherTable, 'format' | 'place' | 'latDeg' | 'lonDeg' | 'utcOffsetHours'> &
    Partial<Pick<WeatherTable, 'windHeightM' | 'typical'>>,
  hours: readonly WeatherHour[],
): WeatherTable {
  const whole = (key: 'month' | 'day' | 'hourEnd') => Uint8Array.from(hours, (hour) => hour[key]);
  const real = (key: keyof WeatherHour) => Float32Array.from(hours, (hour) => hour[key] ?? Number.NaN);
  return {
    windHeightM: STANDARD_WIND_HEIGHT_M,
    typical: null,
    ...head,
    hourCount: hours.length,
    year: Uint16Array.from(hours, ({ year }) => year ?? 0),
    month: whole('month'),
    day: whole('day'),
    hourEnd: whole('hourEnd'),
    globalWm2: real('globalWm2'),
    diffuseWm2: real('diffuseWm2'),
    windFromDeg: real('windFromDeg'),
    windSpeedMps: real('windSpeedMps'),
    temperatureC: real('temperatureC'),
    dewPointC: real('dewPointC'),
  };
}
