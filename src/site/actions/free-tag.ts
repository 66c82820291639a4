/** The next free tag after one: N4 gives N5, or the next number nobody has; a tag without a number gets one. */
export function freeTag(like: string, taken: ReadonlySet<string | undefined>): string {
  const [, letters, digits] = /^(.*?)(\d*)$/s.exec(like) as RegExpExecArray;
  let n = digits === '' ? 1 : Number(digits);
  while (taken.has(`${letters}${n}`) || `${letters}${n}` === like) n++;
  return `${letters}${n}`;
}
