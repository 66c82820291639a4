import { listInWords } from '../units/list-in-words.ts';
import { shareAt } from './share-at.ts';
import type { CropLook, YearsLook } from './years-look-types.ts';

/** When a patch turns dark for good, and what takes most of its light then; null: it is not known yet. */
export interface PatchTurn {
  readonly name: string;
  readonly years: {
    readonly darkFromYear: number | null;
    readonly darkBy: { readonly label: string } | null;
  } | null;
}

export interface YearsAnswer {
  readonly figure: string;
  readonly sentence: string;
}

const HALF = 0.5;
const LAST_YEAR = 40;
/** Patches that are told one by one. */
const MOST_PATCHES = 2;

/** When the field comes into shelter, when patches turn dark and by what, and when the first crops come. */
export function yearsAnswer(look: YearsLook, patches: readonly PatchTurn[] | null): YearsAnswer {
  const { figure, sentence } = shelterAnswer(look);
  const more = [patches && darkSentence(patches), look.crops && cropSentence(look.crops)];
  return { figure, sentence: [sentence, ...more].filter(Boolean).join(' ') };
}

function shelterAnswer(look: YearsLook): YearsAnswer {
  const { years, fieldName } = look;
  const shares = look.figures.map(({ shelteredShare }) => shelteredShare);
  const from = firstFrom(years, shares);
  if (from === null) {
    const most = shares.reduce((best, share, k) => (share > shares[best] ? k : best), 0);
    return {
      figure: percent(shares[most]),
      sentence: `of ${fieldName} is in shelter at most, in year ${years[most]}: not half of it in any year to ${LAST_YEAR}.`,
    };
  }
  const lost = years.find((year, k) => year > from && shares[k] < HALF);
  const until = lost === undefined ? '' : `, until year ${lost}`;
  if (from === 0)
    return { figure: 'From the start', sentence: `half of ${fieldName} is in shelter${until}.` };
  return {
    figure: `Year ${from}`,
    sentence: `Half of ${fieldName} is in shelter from then on${until}${bandWords(look)}.`,
  };
}

/** " (7 to 12, as things grow fast or slowly)": from when on half the field is in shelter. */
function bandWords({ band }: YearsLook): string {
  if (!band) return '';
  const every = Array.from({ length: LAST_YEAR + 1 }, (_, year) => year);
  const reached = (pace: 'slow' | 'fast') => {
    const shares = band[pace].map(({ shelteredShare }) => shelteredShare);
    return firstFrom(
      every,
      every.map((year) => shareAt(band.years, shares, year)),
    );
  };
  const [fast, slow] = [reached('fast'), reached('slow')];
  if (fast === null || fast === slow) return '';
  return ` (${fast} to ${slow ?? `after ${LAST_YEAR}`}, as things grow fast or slowly)`;
}

const firstFrom = (years: readonly number[], shares: readonly number[]): number | null =>
  years.find((_, k) => shares[k] >= HALF) ?? null;

/** "Herb ground turns dark in year 17, by Walnut N2."; null until the years of the patches are known. */
function darkSentence(patches: readonly PatchTurn[]): string | null {
  if (patches.length === 0 || patches.some(({ years }) => years === null)) return null;
  const turning = patches
    .flatMap(({ name, years }) =>
      years && years.darkFromYear !== null ? [{ name, ...years, year: years.darkFromYear }] : [],
    )
    .sort((a, b) => a.year - b.year);
  if (turning.length === 0)
    return `${patches.length === 1 ? patches[0].name : 'Every patch'} keeps enough light to year ${LAST_YEAR}.`;
  const by = ({ darkBy }: (typeof turning)[number]) => (darkBy ? `, by ${darkBy.label}` : '');
  const told = turning
    .slice(0, MOST_PATCHES)
    .map((each) =>
      each.year === 0
        ? `${each.name} is too dark from the start${by(each)}`
        : `${each.name} turns dark in year ${each.year}${by(each)}`,
    );
  const left = turning.length - told.length;
  return `${[...told, ...(left > 0 ? [`${left} more by year ${turning[turning.length - 1].year}`] : [])].join('; ')}.`;
}

/** "The first crop comes in year 8, of Hazel; 30 of 42 trees bear in year 40." */
function cropSentence({ trees, species, bearing }: CropLook): string {
  const [first] = species;
  const soonest = first.firstYear.usual;
  if (soonest === null) return `None of the ${trees} crop trees bears by year ${LAST_YEAR}.`;
  const names = species
    .filter(({ firstYear }) => firstYear.usual === soonest)
    .map(({ speciesName }) => speciesName);
  const start =
    soonest === 0
      ? `${capital(listInWords(names))} ${names.length === 1 ? 'bears' : 'bear'} from the start`
      : `The first crop comes in year ${soonest}, of ${listInWords(names)}`;
  const all = bearing.usual.indexOf(trees);
  const end =
    all >= 0
      ? all > soonest
        ? `; all ${trees} trees bear in year ${all}`
        : ''
      : `; ${bearing.usual[LAST_YEAR]} of ${trees} trees bear in year ${LAST_YEAR}`;
  return `${start}${end}.`;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const percent = (share: number): string => `${Math.round(share * 100)} %`;
