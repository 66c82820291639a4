import { FEWEST_PLANTS, SPREADS } from '../growth/fit-vigour.ts';
import type { LeafDays } from '../growth/leaf-calendar.ts';
import type { Misses } from '../growth/miss.ts';
import { READING_SPREAD } from '../growth/plant-vigour.ts';
import { MONTHS } from '../units/months.ts';
import type { ComparedReading, SiteVigour } from './site-vigour.ts';

/** What measured heights say, in the words of the screen and of the command line. */

const percent = (share: number): string => `${Math.round(Math.abs(share) * 100)} %`;
const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** "14 % more than usual". */
export function vigourWords(vigour: number): string {
  if (percent(vigour - 1) === '0 %') return 'As usual';
  return `${percent(vigour - 1)} ${vigour > 1 ? 'more' : 'less'} than usual`;
}

const missWords = ({ meanShare, leanShare }: Misses): string =>
  percent(leanShare) === '0 %'
    ? `${percent(meanShare)} apart in the mean, as many above as below`
    : `${percent(meanShare)} apart in the mean, and things were ${percent(leanShare)} ${leanShare > 0 ? 'taller' : 'lower'} than expected`;

/** One sentence each: what was read, what it says, how far the model missed before and after. */
export function vigourSentences({
  readings,
  plants,
  fit,
  before,
  after,
  untold,
  now,
  isNews,
}: SiteVigour): string[] {
  if (!before)
    return [
      `No height has been read of a plant whose year of planting or whose earlier height is known, so that nothing is told of this ground: things are expected to grow ${vigourWords(now).toLowerCase()}.`,
    ];
  const read = `${counted(readings.length, 'height')} of ${counted(plants, 'plant')}`;
  if (!fit || !after)
    return [
      `${read}: too few to say how well things grow here, for which ${FEWEST_PLANTS} plants are needed. Expected and read lay ${missWords(before)}.`,
    ];
  const { vigour, errorShare } = fit.site;
  return [
    `${read} say that things grow to ${vigour.toFixed(2)} times the size that they have on usual ground, give or take ${percent(errorShare)}.`,
    `Expected and read lay ${missWords(before)}; ${
      isNews
        ? `with what they say it would be ${percent(after.meanShare)}`
        : 'the site has what they say already'
    }${untold ? `, and ${percent(untold.meanShare)} for a plant that was not measured` : ''}.`,
    ...fit.species
      .filter(({ vigour: own }) => percent(own - 1) !== '0 %')
      .map(
        ({ commonName, vigour: own, plants: of }) =>
          `${commonName} (${counted(of, 'plant')}): ${percent(own - 1)} ${own > 1 ? 'more' : 'less'} than other things here.`,
      ),
  ];
}

/** How that is worked out, and where it comes from. */
export const VIGOUR_RULE = `Each plant says by what factor its curve must be stretched to meet its readings. Plants scatter about their species (${percent(SPREADS.plants)}), species about the site (${percent(SPREADS.species)}), sites about usual ground (${percent(SPREADS.sites)}), and a height is read to ${percent(READING_SPREAD)}: each mean is weighted by what is known of it and drawn towards the next, the more the fewer plants there are (Efron & Morris 1975; Lappi 1991 for height curves; both from memory; the spreads are common practice, no source). Shelter and care are not reckoned with.`;

/** "+1.2 m, 14 %" @param metres writes a length. */
export function readMissWords(
  { reading, expectedM }: ComparedReading,
  metres: (lengthM: number) => string,
): string {
  const missM = reading.heightM - expectedM;
  return `${missM < 0 ? '−' : '+'}${metres(Math.abs(missM))}, ${missM < 0 ? '−' : '+'}${percent(missM / expectedM)}`;
}

/** "5 April", of a day counted from 0 = 1 January of a common year. */
function dayOfYearWords(day: number): string {
  const at = new Date(Date.UTC(2023, 0, 1 + Math.round(day)));
  return `${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]}`;
}

/** When leaves are out and down. */
export function leafWords(leaves: LeafDays | null, winterShare: number): string {
  if (!leaves) return 'Evergreen.';
  const { out, fall } = leaves;
  const span = ({ firstDay, lastDay }: LeafDays['out']) =>
    `${dayOfYearWords(firstDay)} to ${dayOfYearWords(lastDay)}`;
  const kept = winterShare > 0 ? `; ${percent(winterShare)} of the leaves stay through the winter` : '';
  return `Leaves come ${span(out)} and fall ${span(fall)}${kept}.`;
}
