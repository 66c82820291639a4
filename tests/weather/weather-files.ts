/** Small weather files, made here: a year of hours with a known course. */
export interface HourOfYear {
  readonly month: number;
  readonly day: number;
  readonly hourEnd: number;
  /** 0 for the hour that ends at 01:00 on 1 January. */
  readonly index: number;
  /** The calendar year, where a file of several is made. */
  readonly year?: number;
}

function hoursOfYear(): HourOfYear[] {
  return Array.from({ length: 8760 }, (_, index) => {
    const day = new Date(Date.UTC(2023, 0, 1 + Math.floor(index / 24)));
    return { month: day.getUTCMonth() + 1, day: day.getUTCDate(), hourEnd: (index % 24) + 1, index };
  });
}

export interface HourValues {
  readonly global: number | string;
  readonly diffuse: number | string;
  readonly from: number | string;
  readonly speed: number | string;
  readonly temperature: number | string;
}
/** Sun between 6 and 18, wind from the south-west. */
export const plainHour = ({ hourEnd }: HourOfYear): HourValues => ({
  global: hourEnd > 6 && hourEnd <= 18 ? 400 : 0,
  diffuse: hourEnd > 6 && hourEnd <= 18 ? 150 : 0,
  from: 220,
  speed: 4,
  temperature: 11.5,
});

const two = (value: number): string => String(value).padStart(2, '0');

const TMY3_HEADINGS = [
  'Date (MM/DD/YYYY)',
  'Time (HH:MM)',
  'GHI (W/m^2)',
  'DHI (W/m^2)',
  'Dry-bulb (C)',
  'Wdir (degrees)',
  'Wspd (m/s)',
];

export function tmy3(values: (hour: HourOfYear) => HourValues = plainHour): string {
  const lines = hoursOfYear().map((hour) => {
    const { global, diffuse, temperature, from, speed } = values(hour);
    const date = `${two(hour.month)}/${two(hour.day)}/${1980 + hour.month}`;
    return [date, `${two(hour.hourEnd)}:00`, global, diffuse, temperature, from, speed].join(',');
  });
  return ['999999,"INVENTED FIELD",XX,-4.0,45.100,-64.500,20', TMY3_HEADINGS.join(','), ...lines, ''].join(
    '\n',
  );
}

/** @param years of which the file holds the hours, none with a leap day. */
export function epw(
  values: (hour: HourOfYear) => HourValues = plainHour,
  years: readonly number[] = [1999],
): string {
  const hours = years.flatMap((year) => hoursOfYear().map((hour) => ({ ...hour, year })));
  const lines = hours.map((hour) => {
    const { global, diffuse, temperature, from, speed } = values(hour);
    const cells: (string | number)[] = new Array(35).fill(0);
    [cells[0], cells[1], cells[2], cells[3], cells[4]] = [hour.year, hour.month, hour.day, hour.hourEnd, 60];
    cells[5] = 'invented';
    [cells[6], cells[13], cells[15], cells[20], cells[21]] = [temperature, global, diffuse, from, speed];
    return cells.join(',');
  });
  return [
    'LOCATION,Invented Plain,CAN,NZL,made here,000000,-43.600,171.900,12.0,350.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,made by a test',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
    ...lines,
  ].join('\r\n');
}

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
