import { directionWord } from '../units/compass.ts';
import type {
  EdgeBest,
  EdgeNeeds,
  EdgeProfile,
  EdgeSide,
  EdgeStretch,
  EdgeUse,
  EdgeYear,
} from './edge-types.ts';

/** How a person's lengths are written: a figure in the person's unit, and the unit. */
export interface Lengths {
  readonly figure: (lengthM: number) => string;
  readonly unit: string;
}

/** What a stretch is called in a table. */
export const USE_NAMES: Readonly<Record<EdgeUse, string>> = {
  sun: 'for sun lovers',
  shade: 'for shade-tolerant plants',
  exposed: 'light enough, too little shelter',
  neither: 'neither light nor shelter enough',
  dark: 'too dark',
};

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const figures = ({ lightShare, windCut }: EdgeBest): string =>
  `${percent(lightShare)} of open light, wind cut by ${percent(windCut)}`;
const heights = (lengthM: number, heightM: number): string => (lengthM / heightM).toFixed(1);

/** "north-east side". */
export const sideWords = ({ facingDeg }: Pick<EdgeSide, 'facingDeg'>): string =>
  `${directionWord(facingDeg)} side`;

/** The longest stretch of one use; null: there is none. */
function longest({ stretches }: EdgeYear, use: EdgeUse): EdgeStretch | null {
  const all = stretches.filter((stretch) => stretch.use === use);
  return all.length === 0 ? null : all.reduce((a, b) => (b.toM - b.fromM > a.toM - a.fromM ? b : a));
}

const length = (lengthM: number, { figure, unit }: Lengths): string => `${figure(lengthM)} ${unit}`;
const range = (fromM: number, toM: number, { figure, unit }: Lengths): string =>
  `${figure(fromM)} to ${figure(toM)} ${unit}`;

/** "4 to 22 m", with its heights: "(0.2 to 1.1 heights)". */
function between({ fromM, toM }: EdgeStretch, heightM: number, lengths: Lengths): string {
  return `${range(fromM, toM, lengths)} from it (${heights(fromM, heightM)} to ${heights(toM, heightM)} heights)`;
}

/** What one side of an edge is good for in one year, a sentence each; made from the figures by rule. */
export function edgeSentences(year: EdgeYear, needs: EdgeNeeds, lengths: Lengths): string[] {
  const { heightM, bins } = year;
  if (heightM === null) return [`It does not stand in year ${year.year}.`];
  if (bins.length === 0) return ['Nothing is known of the ground beside it.'];
  const sun = longest(year, 'sun');
  const shade = longest(year, 'shade');
  const said = [
    sun && year.bestSun
      ? `Sun lovers: ${between(sun, heightM, lengths)}, best about ${length(year.bestSun.atM, lengths)} out: ${figures(year.bestSun)}.`
      : `Sun lovers: nowhere. ${whyNoSun(year, needs)}`,
    shade && year.bestShade
      ? `Shade-tolerant plants: ${between(shade, heightM, lengths)}, best about ${length(year.bestShade.atM, lengths)} out: ${figures(year.bestShade)}.`
      : 'Shade-tolerant plants have no strip of their own.',
  ];
  const nothing = year.stretches.filter(({ use }) => use === 'dark' || use === 'neither');
  said.push(
    nothing.length === 0
      ? 'For nothing: no strip.'
      : `For nothing: ${nothing.map((stretch) => nothingWords(stretch, lengths)).join('; ')}.`,
  );
  const exposed = longest(year, 'exposed');
  if (exposed)
    said.push(
      `${isLast(exposed, year) ? `From ${length(exposed.fromM, lengths)} on` : `From ${range(exposed.fromM, exposed.toM, lengths)}`} there is light enough and too little shelter: that ground needs a belt of its own.`,
    );
  return said;
}

const isLast = ({ toM }: EdgeStretch, { bins }: EdgeYear): boolean => toM === bins[bins.length - 1].toM;

function nothingWords({ use, fromM, toM }: EdgeStretch, lengths: Lengths): string {
  const where = fromM === 0 ? `the first ${length(toM, lengths)}` : range(fromM, toM, lengths);
  return use === 'dark' ? `${where}, too dark` : `${where}, with neither light nor shelter enough`;
}

/** Which of the two is missing where the other is there. */
function whyNoSun({ bins }: EdgeYear, { sunLight, windCut }: EdgeNeeds): string {
  const lit = bins.filter((bin) => bin.lightShare >= sunLight);
  if (lit.length === 0)
    return `Light comes to ${percent(Math.max(...bins.map((bin) => bin.lightShare)))} at most; ${percent(sunLight)} is wanted.`;
  const most = Math.max(...lit.map((bin) => bin.windCut));
  return `Where there is light enough the wind is ${most < 0.005 ? 'not cut at all' : `cut by ${percent(most)} at most`}; ${percent(windCut)} is wanted.`;
}

/** What was looked at, and how it is to be read. */
export const edgeCaveat = ({ needs }: Pick<EdgeProfile, 'needs'>): string =>
  `Growing season, everything that stands acting, planned belts with it and planned trees not. Light enough: ${percent(needs.sunLight)} of open light for sun lovers, ${percent(needs.shadeLight)} for shade-tolerant plants; shelter enough: wind cut by ${percent(needs.windCut)}. Roots reach as far as the edge is tall and take water there (common practice, no source).`;
