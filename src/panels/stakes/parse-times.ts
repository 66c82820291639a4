/**
 * Clock times as people type them, such as "9:30, 12.15 and 15": HH:MM in order, none twice.
 * @returns the first piece that is no clock time instead, where there is one.
 */
export function parseTimes(text: string): { readonly times: readonly string[] } | { readonly wrong: string } {
  const pieces = text.split(/\s*(?:,|;|\s|\band\b)\s*/).filter((piece) => piece !== '');
  const times = new Set<string>();
  for (const piece of pieces) {
    const found = /^(\d{1,2})(?:[:.h](\d{2}))?h?$/.exec(piece);
    const [hour, minute] = [Number(found?.[1]), Number(found?.[2] ?? 0)];
    if (!found || hour > 23 || minute > 59) return { wrong: piece };
    times.add(`${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`);
  }
  return { times: [...times].sort() };
}
