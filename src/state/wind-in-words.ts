import { BEAUFORT_SCALE, sectorsFromWords, type WindInWords } from '../jobs/wind-words.ts';
import type { WindRecord } from '../site/records/site.ts';

export type WindSaying = WindInWords;

/** Strengths by what is seen on land, as far as a gardener stays out to look. */
export const LAND_SIGNS: readonly { readonly force: number; readonly words: string }[] =
  BEAUFORT_SCALE.filter(({ force }) => force >= 2 && force <= 10).map(({ force, name, landSign }) => ({
    force,
    words: `${name}: ${landSign}`,
  }));

export const HOW_OFTEN: Readonly<Record<WindSaying['howOften'], string>> = {
  often: 'often',
  sometimes: 'now and then',
  rarely: 'a few days',
};

/** Sayings as the wind record of a site: the mast height is the usual 10 m, as Beaufort's scale has it. */
export const windFromWords = (
  sayings: readonly WindSaying[],
): WindRecord & { sectors: NonNullable<WindRecord['sectors']> } => ({
  heightM: 10,
  calmShare: 0,
  origin: 'words',
  sectors: sectorsFromWords(sayings).map((sector) => ({ ...sector })),
});
