import type { BeltFacts } from '../belts/belt-facts.ts';
import { bridgeSentence, insuranceSentence, whenSentence } from '../belts/belt-words.ts';
import type { BridgeOffer } from '../belts/bridge.ts';
import { type BeltFinding, type Darkened, FINDING_NAMES } from '../belts/finding-types.ts';
import type { Insurance } from '../belts/insurance-belt.ts';
import type { BeltWhen } from '../belts/years-to-protect.ts';

export interface BeltAnswer {
  readonly facts: BeltFacts;
  readonly findings: readonly BeltFinding[];
  readonly darkened: readonly Darkened[];
  readonly when: BeltWhen | null;
  readonly offers: readonly BridgeOffer[];
  /** Null for what is planned, and for what has no owner. */
  readonly insurance: Insurance | null;
}

export interface BeltsPage {
  readonly siteName: string;
  readonly baseYear: number;
  readonly year: number;
  readonly layout: string | null;
  readonly fieldName: string;
  readonly belts: readonly BeltAnswer[];
}

const metres = (lengthM: number): string => `${lengthM >= 100 ? Math.round(lengthM) : lengthM.toFixed(1)} m`;

export function beltsText({ siteName, baseYear, layout, fieldName, belts }: BeltsPage): string {
  const calendar = (year: number) => baseYear + year;
  const lines = [
    `${siteName}${layout === null ? '' : `, layout ${layout}`}: belts and blocks for ${fieldName}`,
  ];
  for (const { facts, findings, when, offers, insurance } of belts) {
    const who = facts.planned ? 'planned' : `stands${facts.owner ? `, owner: ${facts.owner}` : ''}`;
    lines.push('', `${facts.label} (${[who, ...facts.mixture.names].join(', ')})`);
    if (findings.length === 0) lines.push('  Nothing found wrong with it.');
    for (const { kind, says, cure, source } of findings)
      lines.push(`  - ${FINDING_NAMES[kind]}. ${says} ${cure} [${source}]`);
    if (when) lines.push(`  When: ${whenSentence(when, fieldName, metres)}`);
    for (const offer of offers) {
      lines.push(`  Until then: ${bridgeSentence(offer, fieldName, calendar, metres)}`);
      lines.push(...offer.cautions.map((caution) => `    Caution: ${caution}`));
    }
    if (insurance) lines.push(`  Borrowed: ${insuranceSentence(insurance, calendar)}`);
  }
  return `${lines.join('\n')}\n`;
}

const round = (value: number): number | null =>
  Number.isFinite(value) ? Math.round(value * 10_000) / 10_000 : null;
const rounded = (values: readonly number[]) => values.map(round);
const byPace = (of: Readonly<Record<'slow' | 'usual' | 'fast', readonly number[]>>) => ({
  slow: rounded(of.slow),
  usual: rounded(of.usual),
  fast: rounded(of.fast),
});

/** The same as data; years are after the base year, a figure that is not known is null. */
export function beltsJson({ siteName, baseYear, year, layout, fieldName, belts }: BeltsPage): string {
  const answer = {
    site: siteName,
    baseYear,
    year,
    layout,
    field: fieldName,
    belts: belts.map(({ facts, findings, darkened, when, offers, insurance }) => ({
      id: facts.id,
      label: facts.label,
      kind: facts.kind,
      status: facts.planned ? 'planned' : 'existing',
      owner: facts.owner,
      purpose: facts.purpose,
      species: facts.mixture.names,
      heightAt20M: round(facts.heightM),
      lengthM: round(facts.lengthM),
      densityInLeaf: round(1 - facts.porosityOn),
      densityBare: round(1 - facts.porosityOff),
      findings,
      darkens: darkened.map(({ patch, hoursADay, seasonHours, lightShare }) => ({
        patch,
        hoursADay: round(hoursADay),
        seasonHours: round(seasonHours),
        lightShare: round(lightShare),
      })),
      when: when
        ? {
            windFromDeg: round(when.fromDeg),
            usefulFromYear: when.usefulFrom,
            shareOfFieldAtTwentyYears: round(when.fullShare),
            years: when.years,
            shareOfFieldCutBy30: byPace(when.protectedShare),
            fiveHeightsBehindM: round(when.watchedM),
            cutAtFiveHeights: byPace(when.cutAtWatched),
          }
        : null,
      bridges: offers.map(({ kind, fromYear, toYear, gains, drawn }) => ({
        kind,
        fromYear,
        toYear,
        properties: drawn.properties,
        gains: gains.map((gain) => ({
          year: gain.year,
          shareOfFieldCutBy30: { without: round(gain.protectedWithout), with: round(gain.protectedWith) },
          meanCut: { without: round(gain.meanCutWithout), with: round(gain.meanCutWith) },
        })),
      })),
      insurance: insurance
        ? {
            felledInYear: insurance.wish.felledInYear,
            keepCut: round(insurance.leastCutShare),
            cutWithEdge: round(insurance.withEdge),
            cutWithoutEdge: round(insurance.withoutEdge),
            lowestPlantedAtOnce: round(insurance.plantedAtOnce),
            needless: insurance.needless,
            latestYearToPlant: insurance.latest,
          }
        : null,
    })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
