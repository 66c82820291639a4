/** What is said of the cuts of a winter; the same on the screen and the command line. */
import { CARE_CAUTIONS } from '../plants/care-cautions.ts';
import type { CutWay, ProposedCut, StaysDark, WinterCuts } from './cut-result.ts';
import { type CutAim, type CutOption, YEARS_TO_KEEP } from './cut-types.ts';

/** How a length is said, in the person's units. */
export type LengthWords = (metres: number) => string;

const AIM_WORDS: Readonly<Record<CutAim, string>> = {
  fewest: 'fewest cuts',
  crop: 'least crop lost',
  shelter: 'least shelter lost',
  standing: 'nothing felled',
};
const COUNT_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;

/** "Fewest cuts and nothing felled". */
export const cutAimWords = ({ aims }: CutWay): string => capital(listed(aims.map((aim) => AIM_WORDS[aim])));

/** "raise to 4 m"; @param name of the plant, between verb and rest. */
function doneTo(name: string, { kind, care }: CutOption, length: LengthWords): string {
  if (kind === 'thin') {
    const again = care.everyYears ? `, again in year ${care.everyYears} after` : '';
    return `thin ${name} by ${percent(care.share ?? 0)}${again}`;
  }
  if (kind === 'raiseCrown') return `raise ${name} to ${length(care.heightM ?? 0)}`;
  if (kind === 'pollard') return `pollard ${name} at ${length(care.heightM ?? 0)}`;
  return `${kind === 'coppice' ? 'coppice' : 'fell'} ${name}`;
}

/** "Raise Walnut N2 to 4 m". */
export const cutWords = ({ plant, option }: ProposedCut, length: LengthWords): string =>
  capital(doneTo(plant.label, option, length));

/** "costs 2.4 years of its crop". */
export function cropWords(cropYearsLost: number): string {
  if (cropYearsLost < 0.05) return 'no crop lost';
  const years = cropYearsLost < 10 ? cropYearsLost.toFixed(1) : String(Math.round(cropYearsLost));
  return `${years} year${years === '1.0' ? '' : 's'} of a crop lost`;
}

/** "wind cut by 23 % instead of 25 % in the field’s mean". */
export function shelterWords({ windCut }: CutWay): string {
  const [was, is] = [windCut.without, windCut.with].map((share) => (share * 100).toFixed(1));
  return was === is
    ? `wind cut by ${is}\u00a0% in the field’s mean, as before`
    : `wind cut by ${is}\u00a0% in the field’s mean instead of ${was}\u00a0%`;
}

/** The answer: what to do this winter and until when it lasts. */
export function cutsAnswer(
  found: WinterCuts,
  length: LengthWords,
  shown: CutWay | undefined = found.ways[0],
): string {
  const { patches, dark, fromYear, toYear, staysDark } = found;
  if (patches === 0) return 'There is no patch and no field whose light could be kept.';
  if (dark.length === 0)
    return `Nothing need be cut in the winter before ${fromYear}: ${patches === 1 ? 'the patch keeps' : `all ${patches} patches keep`} enough light until ${toYear}.`;
  const still = staysDark.map(staysDarkWords).join(' ');
  const names = dark.filter((name) => !staysDark.some((one) => one.name === name));
  if (!shown)
    return names.length === 0
      ? still
      : [`No cuts were found that keep enough light on ${listed(names)} until ${toYear}.`, still]
          .join(' ')
          .trim();
  const count = shown.cuts.length;
  const number = capital(COUNT_WORDS[count] ?? String(count));
  const whose =
    staysDark.length > 0 || patches !== dark.length
      ? listed(names)
      : patches === 1
        ? 'the patch'
        : 'all patches';
  const what = listed(shown.cuts.map(({ plant, option }) => doneTo(plant.label, option, length)));
  return `${number} cut${count === 1 ? '' : 's'} in the winter before ${fromYear} keep${count === 1 ? 's' : ''} ${whose} bright until ${toYear}: ${what}.${still ? ` ${still}` : ''}`;
}

/** Why a patch stays dark. */
function staysDarkWords({ name, areaShareToKeep, mostAreaShare, because }: StaysDark): string {
  const most = `${name} stays too dark whatever of yours is cut: at most ${percent(mostAreaShare)} of it would have enough light, of the ${percent(areaShareToKeep)} asked`;
  if (!because) return `${most}. Less light to keep, or a plant for deep shade, would suit it.`;
  const whose = because.owner ? ` (${because.owner})` : '';
  return `${most}, because of ${because.label}${whose}.`;
}

/** Whether the search was complete, where it was not. */
export const notProvenWords = ({ proven }: CutWay): string | null =>
  proven ? null : 'Not every set of cuts could be looked at: there may be one with fewer.';

/** Things to see to before anything is cut. */
export function cutCautions({ cuts }: CutWay): string[] {
  const kinds = new Set(cuts.map(({ option }) => option.kind));
  return [
    ...CARE_CAUTIONS,
    ...(kinds.has('coppice') || kinds.has('pollard')
      ? [
          'An old plant that was never cut before may not shoot again; keep browsing animals off the new shoots.',
        ]
      : []),
    ...(kinds.has('thin') || kinds.has('raiseCrown')
      ? [
          'Usual practice takes no more than a third of a crown at once, and clears no more than the lowest third of the height.',
        ]
      : []),
    ...(cuts.some(({ plant }) => plant.kind === 'belt')
      ? ['A belt that is cut shelters less until it has grown again: see to nets or nurse rows first.']
      : []),
    `Growth, foliage and crop are estimates for the next ${YEARS_TO_KEEP} years, and no figure means that a tree is sound.`,
  ];
}
