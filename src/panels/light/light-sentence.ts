import type { PatchOutlook } from '../../state/model.ts';
import { listInWords } from '../../units/list-in-words.ts';

export interface LightAnswer {
  readonly figure: string;
  readonly sentence: string;
  readonly dark: boolean;
}

/** "4 of 6": patches get enough light in year 20; which are too dark, and from which year. */
export function lightAnswer(patches: readonly PatchOutlook[]): LightAnswer {
  const year = patches[0]?.year ?? 0;
  const enough = patches.filter((patch) => patch.enoughLight);
  const dark = patches.filter((patch) => !patch.enoughLight);
  if (patches.length === 1) {
    const [only] = patches;
    const share = Math.round(only.areaShareWithEnoughLight * 100);
    const keep = Math.round(only.shareToKeep * 100);
    return {
      figure: `${share} %`,
      sentence: `of ${only.implicit ? `the ${only.name[0].toLowerCase()}${only.name.slice(1)}` : only.name} keeps ${keep} % of open light or more in year ${year}: ${only.enoughLight ? 'enough' : 'too dark'}.${later(patches, year)}`,
      dark: !only.enoughLight,
    };
  }
  const first = `${patches.length === 0 ? 'No patch' : 'patches get enough light'} in year ${year}.`;
  return {
    figure: `${enough.length} of ${patches.length}`,
    sentence: [first, darkNow(dark), later(enough, year)].filter(Boolean).join(' ').replace(/\s+/g, ' '),
    dark: dark.length > 0,
  };
}

/** Those that are too dark now, grouped by the year from which they stay so. */
function darkNow(dark: readonly PatchOutlook[]): string {
  const byYear = new Map<number | null, string[]>();
  for (const patch of dark) {
    const from = patch.years?.darkFromYear ?? null;
    byYear.set(from, [...(byYear.get(from) ?? []), patch.name]);
  }
  return [...byYear]
    .sort((a, b) => (a[0] ?? 99) - (b[0] ?? 99))
    .map(([from, names]) => {
      const verb = names.length === 1 ? 'is' : 'are';
      const since = from === null ? '' : from === 0 ? ' from the start' : ` from year ${from}`;
      return `${listInWords(names)} ${verb} too dark${since}.`;
    })
    .join(' ');
}

/** Those that have enough now and will not keep it. */
function later(enough: readonly PatchOutlook[], year: number): string {
  const turning = enough.filter(
    (patch) => patch.enoughLight && patch.years?.darkFromYear != null && patch.years.darkFromYear > year,
  );
  if (turning.length === 0) return '';
  const soonest = turning.reduce((a, b) => (a.years!.darkFromYear! <= b.years!.darkFromYear! ? a : b));
  return turning.length === 1
    ? ` ${soonest.name} becomes too dark from year ${soonest.years!.darkFromYear}.`
    : ` ${turning.length} more become too dark later, ${soonest.name} first, from year ${soonest.years!.darkFromYear}.`;
}
