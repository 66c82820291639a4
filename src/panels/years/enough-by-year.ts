import type { PatchOutlook } from '../../state/model.ts';

/**
 * Share of the patches with enough light in each year; null until the years have been followed. Between the years
 * looked at a patch keeps the last answer, and from the year in which it turns dark for good it stays dark.
 */
export function enoughByYear(
  patches: readonly PatchOutlook[],
  lastYear: number,
): { readonly years: readonly number[]; readonly shares: readonly number[] } | null {
  if (patches.length === 0 || patches.some((patch) => patch.years === null)) return null;
  const years = Array.from({ length: lastYear + 1 }, (_, year) => year);
  const isEnough = (patch: PatchOutlook, year: number): boolean => {
    const known = patch.years!;
    if (known.darkFromYear !== null && year >= known.darkFromYear) return false;
    return known.looked.findLast((look) => look.year <= year)?.enoughLight ?? true;
  };
  return {
    years,
    shares: years.map((year) => patches.filter((patch) => isEnough(patch, year)).length / patches.length),
  };
}
