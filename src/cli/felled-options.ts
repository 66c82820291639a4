import { type Command, Option } from 'commander';
import { BELT_LIKE_WORDS, isBeltLike } from '../belts/belt-shape.ts';
import { findThing } from '../outside/find-thing.ts';
import type { Felled } from '../scene/options.ts';
import { labelOf } from '../scene/things.ts';
import type { SiteDocument } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import { BadInputError } from '../units/bad-input.ts';
import { numberBetween, severalTimes } from './common-options.ts';

/** What a command is told to leave standing no longer. */
export interface FelledOptions {
  readonly withoutFeature: readonly string[];
  readonly felledIn?: number;
}

/** Adds the options that look at a site without an edge that stands there. */
export const withFelledOptions = (command: Command): Command =>
  command
    .option(
      '--without-feature <ID|NAME>',
      'a belt, wood or block that is supposed to be gone; may be given several times',
      severalTimes,
      [] as readonly string[],
    )
    .addOption(
      new Option(
        '--felled-in <N>',
        'the year after planting from which on it is gone; 0 otherwise',
      ).argParser(numberBetween(0, 200, 'years', true)),
    );

/** @throws BadInputError for a thing that is not there, or a year of felling with nothing to fell. */
export function felledOf(
  document: SiteDocument,
  layout: string | null,
  { withoutFeature, felledIn }: FelledOptions,
): Felled | null {
  if (withoutFeature.length === 0) {
    if (felledIn !== undefined)
      throw new BadInputError(
        '--felled-in: expected --without-feature beside it, the belt or wood that is felled.',
      );
    return null;
  }
  const ids = withoutFeature.map((name) => findThing(document, layout, name, isBeltLike, BELT_LIKE_WORDS).id);
  return { ids, fromYear: felledIn ?? 0 };
}

/** "Norway spruce belt is supposed to be felled in year 12 (2039)" */
export function felledInWords(document: SiteDocument, { ids, fromYear }: Felled): string {
  const names = ids.map((id) => labelOf(document, featureById(document, id))).join(' and ');
  return `without ${names} from year ${fromYear} (${document.site.baseYear + fromYear}) on`;
}
