/** The latest whole year at which something still holds, by halving. Pure but for what is asked. */

/**
 * @param holds whether it holds when it is done in that year; once it does not hold, it never does later.
 * @returns null: not even in the first year.
 */
export async function latestYear(
  first: number,
  last: number,
  holds: (year: number) => Promise<boolean>,
): Promise<number | null> {
  if (last < first || !(await holds(first))) return null;
  if (await holds(last)) return last;
  let [good, bad] = [first, last];
  while (bad - good > 1) {
    const middle = good + Math.floor((bad - good) / 2);
    if (await holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
