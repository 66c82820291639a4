/** A value as a cell of a table with commas (RFC 4180): quoted where it must be, nothing for what is not there. */
export function csvCell(value: string | number | null | undefined): string {
  const text = String(value ?? '');
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
