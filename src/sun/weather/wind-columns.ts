/** Where a plain table of winds has its time, speed and direction, by its headings. */
export interface WindColumns {
  /** Columns that together give the time: one stamp, a date and a clock time, or year, month, day and hour. */
  readonly time: TimeColumns;
  readonly speed: number;
  readonly direction: number;
  readonly mpsAUnit: number;
  /** Of the air; null: the table has none. */
  readonly temperature: { readonly index: number; readonly fahrenheit: boolean } | null;
  /** Measuring height that a heading names, as in "speed at 10 m"; null where none does. */
  readonly heightM: number | null;
}
export type TimeColumns =
  | { readonly as: 'stamp'; readonly stamp: number }
  | { readonly as: 'date and clock'; readonly date: number; readonly clock: number }
  | {
      readonly as: 'parts';
      readonly year: number;
      readonly month: number;
      readonly day: number;
      readonly hour: number;
    };

/** Metres a second in one unit of a speed heading; knots and miles by definition. */
const SPEED_UNITS: readonly (readonly [RegExp, number])[] = [
  [/km ?\/? ?h|\bkm ?h ?-1|kmh|kph/, 1 / 3.6],
  [/knot|\bkn\b|\bkts?\b|\bsknt\b/, 1852 / 3600],
  [/mph|mi ?\/ ?h|miles/, 1609.344 / 3600],
  [/\bft ?\/ ?s|\bfps\b|feet/, 0.3048],
];

/** What is no mean wind: gusts, peaks, spread, quality flags. */
const OTHER = /gust|peak|max|min\b|std|sigma|deviation|flag|qual|\bqc\b|\bqn\b/;
const SPEED = /speed|spd|velocity|\bws\b|\bwspd\b|\bff\b|\bsknt\b|^wind$|^wind (m s|km|kn|kt|mph|mps)/;
const DIRECTION = /dir|\bdrct\b|\bwd\b|\bdd\b|from|bearing|azimuth/;
const TEMPERATURE = /temp|dry ?bulb|\btmpc?f?\b|\bt2m\b|\btt\b/;
const OTHER_TEMPERATURE = /dew|wet|soil|ground|surface|feels|chill|apparent|water|grass/;
const FAHRENHEIT = /°? ?F\b|fahrenheit|tmpf/i;
const STAMP = /^(date ?time|time ?stamp|valid|observed|stamp|period|obs)/;
const DATE = /^date|^day$|^datum/;
const CLOCK = /^time|^hour|^clock|^hh|^hr\b|^utc|^gmt|^local|^lst/;

/** "Wind_Speed (m/s)" as "wind speed (m/s)": words that can be told apart. */
const wordsOf = (heading: string): string =>
  heading
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll(/[_:"'\s]+|\.(?!\d)/g, ' ')
    .trim();

/** The columns; where some are missing, what is: "a direction". */
export function windColumns(headings: readonly string[]): WindColumns | { readonly missing: string } {
  const words = headings.map(wordsOf);
  const direction = words.findIndex((word) => DIRECTION.test(word) && !OTHER.test(word));
  const speed = words.findIndex((word, i) => i !== direction && SPEED.test(word) && !OTHER.test(word));
  const time = timeColumns(words);
  const missing = [
    ...(time ? [] : ['a time']),
    ...(speed < 0 ? ['a speed'] : []),
    ...(direction < 0 ? ['a direction'] : []),
  ];
  if (!time || missing.length > 0) return { missing: missing.join(' and ') };
  return {
    time,
    speed,
    direction,
    mpsAUnit: unitOf(words[speed]) ?? 1,
    heightM: heightOf(words[speed]),
    temperature: temperatureColumn(headings, words),
  };
}

/** Of the air alone: dew, ground and felt temperatures are others. */
function temperatureColumn(
  headings: readonly string[],
  words: readonly string[],
): WindColumns['temperature'] {
  const index = words.findIndex(
    (word) => TEMPERATURE.test(word) && !OTHER.test(word) && !OTHER_TEMPERATURE.test(word),
  );
  return index < 0 ? null : { index, fahrenheit: FAHRENHEIT.test(headings[index]) };
}

function timeColumns(words: readonly string[]): TimeColumns | null {
  const at = (pattern: RegExp) => words.findIndex((word) => pattern.test(word));
  const [year, month, day, hour] = [
    /^(year|yr|yyyy)\b/,
    /^(month|mon|mm)\b/,
    /^(day|dd)\b/,
    /^(hour|hr|hh)\b/,
  ].map(at);
  if (year >= 0 && month >= 0 && day >= 0 && hour >= 0) return { as: 'parts', year, month, day, hour };
  const stamp = at(STAMP);
  if (stamp >= 0) return { as: 'stamp', stamp };
  const date = at(DATE);
  const clock = words.findIndex((word, i) => i !== date && CLOCK.test(word));
  if (date >= 0 && clock >= 0) return { as: 'date and clock', date, clock };
  const only = date >= 0 ? date : clock;
  return only >= 0 ? { as: 'stamp', stamp: only } : null;
}

/** Metres a second in the unit that a text names; null where it names none. */
export function unitOf(text: string): number | null {
  const words = text.toLowerCase();
  const known = SPEED_UNITS.find(([pattern]) => pattern.test(words));
  if (known) return known[1];
  return /m ?\/ ?s|mps|m ?s ?-1|m s\^-1/.test(words) ? 1 : null;
}

/** "speed 10m", "at 2 m": metres that are not metres a second. */
function heightOf(words: string): number | null {
  const found = /(?:^|[^\d.,])(\d{1,3}(?:[.,]\d+)?) ?m(?![a-z/]| ?s ?-1| ?\/)/.exec(words);
  const heightM = found ? Number(found[1].replace(',', '.')) : Number.NaN;
  return heightM > 0 ? heightM : null;
}
