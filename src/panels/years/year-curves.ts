import type { PatchOutlook } from '../../state/model.ts';
import { shareAt } from '../../years/share-at.ts';
import type { YearsLook } from '../../years/years-look-types.ts';
import { enoughByYear } from './enough-by-year.ts';

/** One curve over the years: shares 0 to 1, with what they are at slow and fast growth where that is known. */
export interface Curve {
  readonly id: 'shelter' | 'light' | 'canopy' | 'crops';
  readonly label: string;
  readonly years: readonly number[];
  readonly shares: readonly number[];
  /** True where the share jumps from one year to the next and does not rise between them. */
  readonly stepped: boolean;
  /** Of how many things the share is; null: of the field. */
  readonly of: number | null;
  readonly band: {
    readonly years: readonly number[];
    readonly slow: readonly number[];
    readonly fast: readonly number[];
  } | null;
}

/**
 * What is known of the years, in the order of the trade: shelter first, then light and the canopy, then crops, where a
 * tree bears any. Curves that are not known yet have no years.
 */
export function yearCurves(look: YearsLook | null, patches: readonly PatchOutlook[] | null): Curve[] {
  const ofField = (
    id: 'shelter' | 'canopy',
    label: string,
    name: 'shelteredShare' | 'canopyShare',
  ): Curve => ({
    id,
    label,
    years: look?.years ?? [],
    shares: look?.figures.map((each) => each[name]) ?? [],
    stepped: false,
    of: null,
    band: look?.band
      ? {
          years: look.band.years,
          slow: look.band.slow.map((each) => each[name]),
          fast: look.band.fast.map((each) => each[name]),
        }
      : null,
  });
  const light = enoughByYear(patches ?? [], 40);
  const curves: Curve[] = [
    ofField('shelter', 'Field in shelter', 'shelteredShare'),
    {
      id: 'light',
      label: 'Patches with enough light',
      years: light?.years ?? [],
      shares: light?.shares ?? [],
      stepped: true,
      of: patches?.length ?? 0,
      band: null,
    },
    ofField('canopy', 'Under canopy', 'canopyShare'),
  ];
  if (look?.crops) {
    const { trees, bearing } = look.crops;
    const shares = (pace: keyof typeof bearing) => bearing[pace].map((count) => count / trees);
    const years = bearing.usual.map((_, year) => year);
    curves.push({
      id: 'crops',
      label: 'Trees bearing',
      years,
      shares: shares('usual'),
      stepped: true,
      of: trees,
      band: { years, slow: shares('slow'), fast: shares('fast') },
    });
  }
  return curves;
}

/** "62 %", "4 of 6": what a curve says of a year. */
export function valueWords({ years, shares, of, stepped }: Curve, year: number): string {
  const last = years.findLastIndex((each) => each <= year);
  const share = stepped ? shares[Math.max(0, last)] : shareAt(years, shares, year);
  if (!Number.isFinite(share)) return '–';
  return of === null ? `${Math.round(share * 100)} %` : `${Math.round(share * of)} of ${of}`;
}

/** "54 to 70 %" at slow and fast growth; null where it is not known or the same. */
export function bandWords(curve: Curve, year: number): string | null {
  const { band } = curve;
  if (!band) return null;
  const ends = (['slow', 'fast'] as const).map((pace) =>
    valueWords({ ...curve, years: band.years, shares: band[pace] }, year),
  );
  if (ends[0] === ends[1]) return null;
  const [low, high] = ends.map((words) => Number.parseInt(words, 10)).sort((a, b) => a - b);
  return `${low} to ${high}${curve.of === null ? ' %' : ''}`;
}
