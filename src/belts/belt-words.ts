/** What the years of belts are called, on the screen and on the command line. */
import { COMPASS_POINTS, compassIndex } from '../wind/compass.ts';
import type { BeltWhen } from './years-to-protect.ts';
import { yearBandWords } from './years-to-protect.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** "Useful from year 9 to 14: then it cuts …" */
export function whenSentence(when: BeltWhen, fieldName: string, metres: (lengthM: number) => string): string {
  const { protects, fullShare, watchedM, cutAtWatched, years, plantedYear } = when;
  if (!protects)
    return `By itself it never cuts the wind by 30 % on a part of ${fieldName} worth naming: it stands too far off, or shelters other ground.`;
  const at20 = years.indexOf(Math.max(0, plantedYear) + 20);
  const [slow, fast] = [cutAtWatched.slow[at20], cutAtWatched.fast[at20]];
  return `Useful from ${yearBandWords(when)} on. Twenty years after planting it cuts the wind from the ${COMPASS_POINTS[compassIndex(when.fromDeg)].name} by 30 % or more on ${percent(fullShare)} of ${fieldName}, and by ${slow === fast ? percent(slow) : `${percent(Math.min(slow, fast))} to ${percent(Math.max(slow, fast))}`} at five heights (${metres(watchedM)}) behind it.`;
}
