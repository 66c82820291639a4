/** Between instants and what the clocks of a place show. Dates are YYYY-MM-DD, times HH:MM on a 24-hour clock. */

/** UTC milliseconds of a clock reading in a zone; null when it cannot be read. In the hour that summer time repeats, the earlier. */
export function utcOfClock(date: string, time: string, timeZone: string): number | null {
  const asUtc = Date.parse(`${date}T${time}:00Z`);
  if (Number.isNaN(asUtc)) return null;
  const offsetAt = (utcMs: number): number => {
    const shown = clockOfUtc(utcMs, timeZone);
    return Date.parse(`${shown.date}T${shown.time}:00Z`) - Math.floor(utcMs / 60_000) * 60_000;
  };
  // The offset at the guess, then at the corrected guess: right except inside the change itself.
  const first = asUtc - offsetAt(asUtc);
  return asUtc - offsetAt(first);
}

/** The calendar day and the time, to the minute begun, that the clocks of a zone show at an instant. */
export function clockOfUtc(utcMs: number, timeZone: string): { date: string; time: string } {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(utcMs);
  const part = (type: string) => parts.find((each) => each.type === type)?.value ?? '';
  return {
    date: `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`,
    time: `${part('hour')}:${part('minute')}`,
  };
}
