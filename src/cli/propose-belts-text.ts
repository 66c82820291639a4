import type { BeltAlternative, BeltProposals } from '../belts/propose-result.ts';
import {
  aimWords,
  answerWords,
  beltCautions,
  fromYearWords,
  overBandWords,
  plantCautions,
} from '../belts/propose-words.ts';

const percent = (share: number): string => `${Math.round(share * 100)}\u00a0%`;
const m2 = (area: number): string => `${Math.round(area)} m²`;

/** What was found, for a person to read. @param out the file that was written; null: none. */
export function proposalsText(
  found: BeltProposals,
  taken: BeltAlternative | null,
  out: string | null,
): string {
  const lines = [
    answerWords(found),
    ...found.alternatives.flatMap((alternative) => ['', ...alternativeLines(found, alternative)]),
    ...(found.alternatives.length > 0
      ? ['', ...new Set(found.alternatives.flatMap(beltCautions))].map((line) =>
          line ? `Caution: ${line}` : line,
        )
      : []),
    ...[
      ...new Set(
        found.alternatives.flatMap(({ belts }) =>
          belts.flatMap(({ option: { plant } }) =>
            [plant, ...(plant.mixedWith ? [plant.mixedWith] : [])].flatMap(({ commonName, cautions }) =>
              cautions.map((each) => `${commonName}: ${each}`),
            ),
          ),
        ),
      ),
    ].map((line) => `Caution: ${line}`),
    ...(out === null ? [] : [writtenWords(found, taken, out)]),
  ];
  return `${lines.join('\n')}\n`;
}

const writtenWords = (found: BeltProposals, taken: BeltAlternative | null, out: string): string =>
  taken?.enough
    ? `Written to ${out}: the site with ${taken.belts.length} planned belt${taken.belts.length === 1 ? '' : 's'} (${aimWords(taken).toLowerCase()}).`
    : `Written to ${out}: the site as it was, as ${found.overShareNow >= found.wish.overShare ? 'no belt is needed' : 'no belts reach what was asked'}.`;

function alternativeLines({ wish }: BeltProposals, alternative: BeltAlternative): string[] {
  const { belts, landM2, darkM2, overShare, light } = alternative;
  return [
    `${aimWords(alternative)}: the wind is cut by ${percent(wish.cutShare)} or more over ${percent(overShare.usual)} (${overBandWords(alternative)} from slow to fast growth), from ${fromYearWords(alternative)} on`,
    `  land ${m2(landM2)}, and ${m2(darkM2)} beside it below half of open light; the field's light falls from ${percent(light.without)} to ${percent(light.with)} of open light`,
    ...belts.map(({ letter, name, option: { place, plant }, heightM, heightBandM: [low, high] }) => {
      const mixed = plant.mixedWith ? `, to be mixed with ${plant.mixedWith.commonName}` : '';
      return `  ${letter}  ${name}: ${plant.species}${mixed}; ${Math.round(place.lengthM)} m long, ${plant.widthM} m wide, ${heightM.toFixed(1)} m high in year ${wish.year} (${low.toFixed(1)} to ${high.toFixed(1)})`;
    }),
  ];
}

/** The same for a program. Shares 0 to 1, lengths m, areas m2; lines longitude and latitude. */
export function proposalsJson(found: BeltProposals): string {
  const { wish, fieldName, fieldAreaM2, overShareNow, tried, help } = found;
  const answer = {
    wish,
    field: fieldName,
    fieldAreaM2,
    overShareNow,
    tried,
    says: answerWords(found),
    help,
    alternatives: found.alternatives.map(
      ({ aims, belts, landM2, darkM2, overShare, meanCut, fromYear, light, enough }, i) => ({
        aims,
        enough,
        landM2,
        darkM2,
        overShare,
        meanCut,
        fromYear,
        light,
        cautions: beltCautions(found.alternatives[i]),
        belts: belts.map(({ letter, name, drawn, heightM, heightBandM, landM2: ownM2, option }) => ({
          letter,
          name,
          lengthM: option.place.lengthM,
          heightM,
          heightBandM,
          landM2: ownM2,
          mixedWith: option.plant.mixedWith?.commonName ?? null,
          cautions: plantCautions(option.plant),
          properties: drawn.properties,
          geometry: drawn.geometry,
        })),
      }),
    ),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
