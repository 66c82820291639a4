/** "Herb ground", "Herb ground and Low patch", "Herb ground, Low patch and 2 more". */
export function listInWords(names: readonly string[], most = 3): string {
  if (names.length === 0) return '';
  if (names.length === 1) return names[0];
  if (names.length <= most) return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
  return `${names.slice(0, most - 1).join(', ')} and ${names.length - most + 1} more`;
}
