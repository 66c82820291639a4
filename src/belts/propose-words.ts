/** What proposed belts are called, and what to see to before planting them; the same on the screen and the command line. */
import { directionWord } from '../units/compass.ts';
import type { BeltAlternative, BeltProposals } from './propose-result.ts';
import type { BeltPlace, BeltPlant, WindSeason } from './propose-types.ts';

const SEASON_WORDS: Readonly<Record<WindSeason, string>> = {
  growing: 'in the growing season',
  rest: 'in the rest of the year',
  year: 'over the year',
};

const AIM_WORDS: Readonly<Record<BeltAlternative['aims'][number], string>> = {
  land: 'least land',
  shade: 'least shade',
  soonest: 'soonest',
  most: 'most shelter that was found',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

/** "Red alder belt, north side". @param facingDeg true azimuth. */
export function beltName(commonName: string, { where }: BeltPlace, facingDeg: number): string {
  const name = directionWord(facingDeg);
  return capital(`${commonName} belt, ${where === 'edge' ? `${name} side` : `across, facing ${name}`}`);
}

/** "Least land and least shade". */
export const aimWords = ({ aims }: BeltAlternative): string =>
  capital(aims.map((aim) => AIM_WORDS[aim]).join(' and '));

/** The wish in a sentence's words: "cut by 30 % over 70 % of Upper Lea in year 12, in the growing season". */
const wishWords = ({ wish, fieldName }: BeltProposals): string =>
  `cut by ${percent(wish.cutShare)} or more over ${percent(wish.overShare)} of ${fieldName} in year ${wish.year}, ${SEASON_WORDS[wish.season]}`;

/** What came out, in one or two sentences. */
export function answerWords(found: BeltProposals): string {
  const { wish, overShareNow, alternatives, help } = found;
  if (overShareNow >= wish.overShare)
    return `No belt is needed: what stands or is planned cuts the wind by ${percent(wish.cutShare)} or more over ${percent(overShareNow)} of ${found.fieldName} in year ${wish.year}, ${SEASON_WORDS[wish.season]}.`;
  if (!help) {
    const count = alternatives.length;
    return `${['One way was', 'Two ways were', 'Three ways were'][count - 1]} found to have the wind ${wishWords(found)}; now it is over ${percent(overShareNow)}.`;
  }
  if (found.tried === 0)
    return `There is no room for a belt on ${found.fieldName}: what stands, is planned or is kept free leaves no stretch long enough. A line across another part of the field, drawn by hand, may still serve.`;
  const best = alternatives[0];
  const reached = best
    ? `The most that was found is ${percent(best.overShare.usual)} of it, with the belts below.`
    : `No belt that has room there adds to the ${percent(overShareNow)} that is sheltered already.`;
  return `The wind cannot be ${wishWords(found)}. ${reached} ${helpWords(found)}`;
}

function helpWords({ wish, help, alternatives }: BeltProposals): string {
  if (!help) return '';
  const parts = [
    ...(help.year === null ? [] : [`waiting until year ${help.year}`]),
    ...(alternatives.length > 0 && help.cutShare >= 0.05 && help.cutShare < wish.cutShare
      ? [`asking for ${percent(Math.floor(help.cutShare * 100) / 100)} instead of ${percent(wish.cutShare)}`]
      : []),
    'a net or a taller nurse row for the first years',
    'ground that is now kept free for other things',
  ];
  return `What would help: ${parts.slice(0, -1).join(', ')}, or ${parts[parts.length - 1]}.`;
}

/** "year 9 (8 to 11)". */
export function fromYearWords({ fromYear }: BeltAlternative): string {
  const { slow, usual, fast } = fromYear;
  const said = (year: number | null) => (year === null ? 'later' : String(year));
  if (usual === null) return 'not within twenty years after that';
  return slow === usual && fast === usual
    ? `year ${usual}`
    : `year ${usual} (${said(fast)} to ${said(slow)})`;
}

/** "72 to 81 %", slow to fast growth. */
export function overBandWords({ overShare: { slow, fast } }: BeltAlternative): string {
  const [low, high] = [Math.min(slow, fast), Math.max(slow, fast)].map((share) => Math.round(share * 100));
  return low === high ? `${low}\u00a0%` : `${low} to ${high}\u00a0%`;
}

/** What to know of the plants of a belt, each with its name where it is not the main one. */
export const plantCautions = ({ cautions, mixedWith }: BeltPlant): string[] => [
  ...cautions,
  ...(mixedWith?.cautions ?? []).map((caution) => `${capital(mixedWith?.commonName ?? '')}: ${caution}`),
];

/** Things to see to before any of the belts is planted. */
export function beltCautions({ belts }: BeltAlternative): string[] {
  const alone = [
    ...new Set(
      belts.flatMap(({ option: { plant } }) => (plant.mixedWith === null ? [plant.commonName] : [])),
    ),
  ];
  const along = belts.some(({ option }) => option.place.where === 'edge');
  return [
    ...(along
      ? [
          'Along a boundary: ask the neighbour first, and look at your local law on hedge heights and distances; shade and roots cross the line.',
        ]
      : []),
    'Before digging: ask the owners of overhead lines, buried cables and drains how far trees must stay away, full-grown ones too.',
    'On clay, trees move foundations: the distances kept here are the usual ones; ask a licensed person where a building is near.',
    ...alone.map(
      (name) =>
        `Plant ${name} mixed with another species of like growth: a belt of one species can fail as a whole.`,
    ),
    'A shelter figure is an estimate from growth curves and one published function: measured belts fall on both sides of it, and no figure means that a tree is sound.',
  ];
}
