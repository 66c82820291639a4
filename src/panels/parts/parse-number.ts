/** A number as people type it: decimal point or comma, a minus sign of any kind. Null when it is none. */
export function parseNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(/[−–]/g, '-')
    .replace(/\s/g, '')
    .replace(/^(-?\d*),(\d+)$/, '$1.$2');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  return Number(plain);
}
