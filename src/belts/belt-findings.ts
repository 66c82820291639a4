/**
 * What is wrong with a belt, in words: each with its numbers, what would cure it, and whose rule it is.
 * Pure: facts in, sentences out. Densities are 1 less the optical porosity (the two are often mistaken for one another).
 */
import type { BeltPurpose } from '../site/records/belt.ts';
import { directionWord } from '../units/compass.ts';
import type { BeltFacts, SeasonOfBelt } from './belt-facts.ts';
import { darkFinding, ownerFinding, speciesFinding } from './belt-findings-of-plants.ts';
import type { SideWind } from './belt-side.ts';
import { type BeltFinding, type Darkened, type FindingWords, listed } from './finding-types.ts';

/** Densities in leaf by what a belt is for (NRCS). */
const DENSITY_FOR: Readonly<Record<BeltPurpose, readonly [least: number, most: number]>> = {
  crops: [0.4, 0.6],
  stock: [0.65, 1],
};
const PURPOSE_WORDS: Readonly<Record<BeltPurpose, string>> = {
  crops: 'crops and soil',
  stock: 'buildings, stock and people',
};
/** A belt should be so many times as long as it is tall at twenty years (NRCS). */
const LEAST_LENGTH_H = 10;
/** Less free space below the leaves is stopped by grass and suckers. Common practice, no source. */
const RAISED_FOOT_M = 0.5;
/** An even rose has a quarter of its wind within 45 degrees of any bearing. Common practice, no source. */
const WRONG_SIDE_SHARE = 0.15;

const NRCS = 'NRCS slide set on windbreaks';
const ENDS = 'wind up to 20 % faster beside ends, in gaps and under raised crowns: Reid & Bird 1990';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** What is wrong with a belt, the weightiest first. @param darkens what it takes from patches; null: not known. */
export function beltFindings(
  facts: BeltFacts,
  darkens: readonly Darkened[] | null,
  words: FindingWords,
): BeltFinding[] {
  const found = [
    sideFinding(facts),
    densityFinding(facts),
    leaflessFinding(facts),
    lengthFinding(facts, words),
    ...gapFindings(facts, words),
    footFinding(facts, words),
    speciesFinding(facts),
    darkFinding(darkens),
    ownerFinding(facts),
  ];
  return found.filter((finding) => finding !== null);
}

function sideFinding({ side, fieldName, heightM }: BeltFacts): BeltFinding | null {
  if (!(heightM > 0)) return null;
  const source =
    'square to the wind, and 40° to either side: Cleugh 1997, Burke 1998; the limit: common practice, no source';
  if (!side)
    return {
      kind: 'side',
      says: `No wind that crosses it reaches ${fieldName} within 20 of its heights.`,
      cure: 'Plant between the field and its worst wind, two to five heights from what it shall shelter.',
      source,
    };
  const { growing, rest, facingDeg } = side;
  if (growing.share >= WRONG_SIDE_SHARE || rest.share >= WRONG_SIDE_SHARE) return null;
  const most = (season: SideWind) => `${directionWord(season.mostFromDeg)} (${percent(season.mostShare)})`;
  return {
    kind: 'side',
    says: `It stands to the ${directionWord(facingDeg)} of ${fieldName}: ${percent(growing.share)} of the wind of the growing season comes from there, ${percent(rest.share)} of the rest of the year’s; most comes from the ${most(growing)} and the ${most(rest)}.`,
    cure: `A belt to the ${directionWord(growing.mostFromDeg)} would meet more of the wind; keep this one if it is for a bitter wind that blows seldom.`,
    source,
  };
}

function densityFinding({ kind, porosityOn, purpose }: BeltFacts): BeltFinding | null {
  const [least, most] = DENSITY_FOR[purpose];
  const density = 1 - porosityOn;
  const wanted = most < 1 ? `${percent(least)} to ${percent(most)}` : `${percent(least)} or more`;
  const stands = `${percent(density)} of it is closed in leaf (${percent(porosityOn)} of the daylight shows through); for ${PURPOSE_WORDS[purpose]} ${wanted} is wanted`;
  if (Math.round(density * 100) > Math.round(most * 100))
    return {
      kind: 'too dense',
      says: `${stands}. The wind is stillest close behind it, and whirls come down sooner.`,
      cure:
        kind === 'block'
          ? 'Its edge opened by somebody trained; or reckon with its shelter close by only.'
          : 'Wider spacing, every third plant out, or the lower branches thinned by somebody trained.',
      source: NRCS,
    };
  if (Math.round(density * 100) < Math.round(least * 100))
    return {
      kind: 'too open',
      says: `${stands}.`,
      cure:
        kind === 'block'
          ? 'Shrubs along its edge, and planting where it is thin.'
          : 'A second row beside it with its plants in the spaces of the first, or closer planting.',
      source: NRCS,
    };
  return null;
}

function leaflessFinding({ growing, rest, porosityOff, porosityOn, purpose }: BeltFacts): BeltFinding | null {
  const [least] = DENSITY_FOR[purpose];
  const windier: readonly [SeasonOfBelt, string, SeasonOfBelt] =
    rest.meanSpeedMps >= growing.meanSpeedMps
      ? [rest, 'the rest of the year', growing]
      : [growing, 'the growing season', rest];
  const [season, name, other] = windier;
  const bare = season.days > 0 ? season.bareDays / season.days : 0;
  const density = 1 - porosityOff;
  if (bare < 0.25 || porosityOff <= porosityOn || Math.round(density * 100) >= Math.round(least * 100))
    return null;
  return {
    kind: 'leafless',
    says: `Bare on ${season.bareDays} of the ${season.days} days of ${name}, the windier season (mean ${season.meanSpeedMps.toFixed(1)} m/s against ${other.meanSpeedMps.toFixed(1)}): then only ${percent(density)} of it is closed.`,
    cure: 'A row of evergreens, or of oak or hornbeam that keep their dead leaves, beside it; not evergreens alone.',
    source: `${NRCS} for the density; days in leaf: common practice, no source`,
  };
}

function lengthFinding(
  { kind, lengthM, heightM, carriedOnBy }: BeltFacts,
  { metres }: FindingWords,
): BeltFinding | null {
  const wholeM = carriedOnBy.reduce((sum, each) => sum + each.lengthM, lengthM);
  const wantedM = LEAST_LENGTH_H * heightM;
  if (kind === 'block' || !(heightM > 0) || wholeM >= wantedM) return null;
  const on = carriedOnBy.map(({ label, lengthM: m }) => `${label} (${metres(m)})`);
  const whole =
    on.length > 0 ? `With ${listed(on)} it is ${metres(wholeM)} long` : `It is ${metres(lengthM)} long`;
  return {
    kind: 'too short',
    says: `${whole}, ${(wholeM / heightM).toFixed(1)} times its height of ${metres(heightM)} at twenty years; the wind comes round its ends.`,
    cure: `${metres(wantedM - wholeM)} more makes ten heights; or join it to what stands, or expect a shorter lee.`,
    source: `${NRCS} (ten times the height of the 20-year tree)`,
  };
}

function gapFindings({ gaps, paths }: BeltFacts, { metres }: FindingWords): BeltFinding[] {
  return [
    ...gaps.map(
      ({ widthM, endDeg, to }): BeltFinding => ({
        kind: 'gap',
        says: `${metres(widthM)} are open between its ${directionWord(endDeg)} end and ${to}: the wind is faster in it.`,
        cure: 'Plant it up; where it is a gate, let the ends overlap, or set a short belt or net before it.',
        source: ENDS,
      }),
    ),
    ...paths.map(
      ({ path, widthM, fromEndM, endDeg }): BeltFinding => ({
        kind: 'gap',
        says: `${path} goes through it ${metres(fromEndM)} from its ${directionWord(endDeg)} end. Left open for it, about ${metres(widthM)} wide, the wind is faster there; the map has the belt closed.`,
        cure: 'Take the path through at a slant, or draw the belt as two with the gap between.',
        source: ENDS,
      }),
    ),
  ];
}

function footFinding({ kind, baseM, heightM }: BeltFacts, { metres }: FindingWords): BeltFinding | null {
  if (!(baseM > RAISED_FOOT_M)) return null;
  return {
    kind: 'raised foot',
    says: `Open below to ${metres(baseM)}, ${percent(baseM / heightM)} of its height at twenty years: the wind goes through under its crowns, faster than in the open.`,
    cure:
      kind === 'block'
        ? 'Shrubs along its edge, and edge trees that keep their branches to the ground.'
        : 'A row of shrubs at its foot, or plants that are cut back so that they fill from below.',
    source: `${ENDS}; from ${metres(RAISED_FOOT_M)} on: common practice, no source`,
  };
}
