/** What the clocks of a time zone show. */

export interface ClockReader {
  timeAt(utcMs: number): { readonly hour: number; readonly minute: number };
  /** The zone's name at a moment, as it is written out ("Atlantic Daylight Time"), and whether daylight saving is in force. */
  zoneAt(utcMs: number): { readonly name: string; readonly daylightSaving: boolean };
}

/** @param timeZone an IANA name that is known (see civilYear, which says so where it is not) */
export function clockReader(timeZone: string, calendarYear: number): ClockReader {
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  });
  const named = new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'long' });
  const partsAt = (utcMs: number): Record<string, number> => {
    const part: Record<string, number> = {};
    for (const { type, value } of clock.formatToParts(utcMs)) part[type] = Number(value);
    return part;
  };
  /** Minutes by which the clocks are ahead of UTC; the day tells an early hour from a late one. */
  const aheadMin = (utcMs: number): number => {
    const { day, hour, minute } = partsAt(utcMs);
    const utc = new Date(utcMs);
    const days = day - utc.getUTCDate();
    const dayTurn = days === 0 ? 0 : Math.abs(days) > 1 ? -Math.sign(days) : days;
    return dayTurn * 1440 + (hour - utc.getUTCHours()) * 60 + minute - utc.getUTCMinutes();
  };
  const standardMin = Math.min(
    ...Array.from({ length: 12 }, (_, month) => aheadMin(Date.UTC(calendarYear, month, 15, 12))),
  );
  return {
    timeAt(utcMs) {
      const { hour, minute } = partsAt(utcMs);
      return { hour, minute };
    },
    zoneAt(utcMs) {
      const name = named.formatToParts(utcMs).find(({ type }) => type === 'timeZoneName')?.value ?? timeZone;
      return { name, daylightSaving: aheadMin(utcMs) > standardMin };
    },
  };
}
