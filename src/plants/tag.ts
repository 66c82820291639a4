import type { RoleLetter } from './species.ts';

/**
 * The next tag for a role: its letter and the number after the highest in use (N1, N2, ...). A gap is not filled: the
 * tag of a tree that is gone may still hang in the field or stand on a printed plan.
 */
export function nextTag(role: RoleLetter, tagsInUse: Iterable<string | undefined>): string {
  const pattern = new RegExp(`^${role}\\s*(\\d+)$`, 'i');
  let highest = 0;
  for (const tag of tagsInUse) {
    const number = Number(tag?.trim().match(pattern)?.[1] ?? 0);
    if (number > highest) highest = number;
  }
  return `${role}${highest + 1}`;
}
