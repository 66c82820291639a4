import { BEAUFORT_SCALE, beaufortForce, sectorsFromWords, type WindInWords } from '../jobs/wind-words.ts';
import type { WindRecord } from '../site/records/site.ts';
import { directionWord } from '../units/compass.ts';

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

/** One of the eight directions as its name, which covers its neighbours too: nobody says it to a sixteenth. */
const widely = (from: WindSaying['from']): WindSaying['from'] =>
  typeof from === 'number' && from % 45 === 0 ? directionWord(from) : from;

/** Sayings as the wind record of a site: the mast height is the usual 10 m, as Beaufort's scale has it. */
export const windFromWords = (sayings: readonly WindSaying[]): WindRecord => ({
  heightM: 10,
  calmShare: 0,
  origin: 'words',
  sectors: sectorsFromWords(sayings.map((saying) => ({ ...saying, from: widely(saying.from) }))).map(
    (sector) => ({ ...sector }),
  ),
});

/** What a mean wind at 10 m is called: "gentle breeze". */
export const beaufortName = (speedMps: number): string => beaufortForce(speedMps).name;
