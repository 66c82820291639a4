import { goodFor } from '../choose/edge-profile.ts';
import type { EdgeProfile, EdgeYear } from '../choose/edge-types.ts';
import { edgeCaveat, edgeSentences, sideWords, USE_NAMES } from '../choose/edge-words.ts';
import { csvCell } from './csv-cell.ts';

const figure = (lengthM: number): string =>
  String(lengthM >= 10 ? Math.round(lengthM) : Number(lengthM.toFixed(1)));
const METRES = { figure, unit: 'm' };
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const heightsOf = (lengthM: number, { heightM }: EdgeYear): number | null =>
  heightM === null ? null : lengthM / heightM;

/** What lies beside an edge, for a person to read. */
export function edgeText(siteName: string, profile: EdgeProfile): string {
  const lines = [`${siteName}: beside ${profile.label}, on ${profile.fieldName}`];
  for (const side of profile.sides)
    for (const year of side.years) {
      lines.push(
        `Its ${sideWords(side)}, year ${year.year}${year.heightM === null ? '' : `, ${figure(year.heightM)} m tall`}`,
        ...edgeSentences(year, profile.needs, METRES).map((sentence) => `  ${sentence}`),
        '       m  heights   light  wind cut  both',
        ...thinned(year.bins).map((bin) => {
          const heights = heightsOf(bin.atM, year);
          return `  ${bin.atM.toFixed(1).padStart(6)}  ${(heights === null ? '–' : heights.toFixed(2)).padStart(7)}  ${percent(bin.lightShare).padStart(6)}  ${percent(bin.windCut).padStart(8)}  ${percent(bin.bothShare).padStart(5)}  ${USE_NAMES[goodFor(bin, profile.needs)]}`;
        }),
      );
    }
  return `${[...lines, edgeCaveat(profile)].join('\n')}\n`;
}

/** Lines of the table for a person; `--csv` has every distance. */
const MOST_LINES = 26;
const thinned = <One>(all: readonly One[]): One[] => {
  const step = Math.ceil(all.length / MOST_LINES);
  return all.filter((_, i) => i % step === 0);
};

/** The same as JSON; lengths in metres, shares 0 to 1. */
export function edgeJson(siteName: string, profile: EdgeProfile): string {
  const sides = profile.sides.map((side) => ({
    facingDeg: side.facingDeg,
    areaM2: side.areaM2,
    years: side.years.map((year) => ({
      ...year,
      sentences: edgeSentences(year, profile.needs, METRES),
    })),
  }));
  return `${JSON.stringify({ site: siteName, ...profile, sides }, null, 2)}\n`;
}

/** One line a side, year and distance. */
export function edgeCsv(profile: EdgeProfile): string {
  const head = [
    'edge',
    'field',
    'side',
    'year',
    'fromM',
    'toM',
    'atM',
    'atHeights',
    'areaM2',
    'lightShare',
    'windCutShare',
    'bothShare',
    'use',
  ];
  const rows = profile.sides.flatMap((side) =>
    side.years.flatMap((year) =>
      year.bins.map((bin) => [
        profile.label,
        profile.fieldName,
        sideWords(side),
        year.year,
        bin.fromM,
        bin.toM,
        bin.atM,
        heightsOf(bin.atM, year),
        bin.areaM2,
        bin.lightShare,
        bin.windCut,
        bin.bothShare,
        USE_NAMES[goodFor(bin, profile.needs)],
      ]),
    ),
  );
  return `${[head, ...rows].map((row) => row.map(csvCell).join(',')).join('\r\n')}\r\n`;
}
