import { worksOf } from '../cuts/cut-answer.ts';
import type { CutWay, ProposedCut, WinterCuts } from '../cuts/cut-result.ts';
import {
  cropWords,
  cutAimWords,
  cutCautions,
  cutsAnswer,
  cutWords,
  notProvenWords,
  shelterWords,
} from '../cuts/cut-words.ts';

const metres = (m: number): string => `${Number(m.toFixed(1))}\u00a0m`;
const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;

/** What was found, for a person to read. @param out the file that was written; null: none. */
export function cutsText(found: WinterCuts, taken: CutWay | null, out: string | null): string {
  const cautions = [...new Set(found.ways.flatMap(cutCautions))];
  const lines = [
    cutsAnswer(found, metres),
    ...found.ways.flatMap((way) => ['', ...wayLines(way)]),
    ...(cautions.length > 0 ? ['', ...cautions.map((caution) => `Caution: ${caution}`)] : []),
    ...(out === null ? [] : [writtenWords(taken, out)]),
  ];
  return `${lines.join('\n')}\n`;
}

const writtenWords = (taken: CutWay | null, out: string): string =>
  taken
    ? `Written to ${out}: the site with ${taken.cuts.length} cut${taken.cuts.length === 1 ? '' : 's'} (${cutAimWords(taken).toLowerCase()}).`
    : `Written to ${out}: the site as it was, as there is nothing to cut.`;

function wayLines(way: CutWay): string[] {
  const notProven = notProvenWords(way);
  return [
    `${cutAimWords(way)}: ${cropWords(way.cropYearsLost)}; ${shelterWords(way)}`,
    ...way.cuts.map(
      (cut) => `  ${cut.letter}  ${cutWords(cut, metres)}: ${cropWords(cut.option.cropYearsLost)}`,
    ),
    ...way.patches.map(
      ({ name, areaShare, areaShareToKeep }) =>
        `  ${name}: ${percent(areaShare.with)} of it has enough light in its darkest year, instead of ${percent(areaShare.without)} (asked: ${percent(areaShareToKeep)})`,
    ),
    ...(notProven ? [`  ${notProven}`] : []),
  ];
}

/** The same for a program. Shares 0 to 1, heights m. */
export function cutsJson(found: WinterCuts): string {
  const { wish, fromYear, toYear, fieldName, patches, dark, staysDark } = found;
  const cutJson = ({ letter, plant, option }: ProposedCut) => ({
    letter,
    id: plant.id,
    label: plant.label,
    says: cutWords({ letter, plant, option }, metres),
    care: option.care,
    works: option.works,
    cropYearsLost: option.cropYearsLost,
    crownTakenShare: option.takenShare,
  });
  const answer = {
    year: wish.year,
    fromYear,
    toYear,
    field: fieldName,
    patches,
    dark,
    says: cutsAnswer(found, metres),
    staysDark,
    ways: found.ways.map((way) => ({
      aims: way.aims,
      works: worksOf(way),
      proven: way.proven,
      cropYearsLost: way.cropYearsLost,
      windCut: way.windCut,
      cautions: cutCautions(way),
      cuts: way.cuts.map(cutJson),
      patches: way.patches,
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
