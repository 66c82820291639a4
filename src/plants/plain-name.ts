/** A plant's name as it is compared: no capitals, accents, hybrid signs, quotes or doubled spaces. */
export function plainName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replace(/[×'’‘"“”`_.]/g, ' ')
    .split(/\s+/)
    .filter((word) => word !== '' && word !== 'x')
    .join(' ');
}

/** Letters to change, add or leave out to get from one word to the other (Levenshtein). */
export function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = previous[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(change, previous[j] + 1, current[j - 1] + 1));
    }
    previous = current;
  }
  return previous[b.length];
}
