import { type ColdRank, type ColdUnits, coldCaveat } from '../choose/cold-words.ts';
import type { SiteFrosts } from '../scene/site-frosts.ts';

/** What the command found. */
export interface ColdPage {
  readonly siteName: string;
  readonly year: number;
  readonly layout: string | null;
  readonly cellM: number;
  /** Of the terrain file; null: there is none. */
  readonly terrainCellM: number | null;
  readonly ranks: readonly ColdRank[];
  readonly frosts: SiteFrosts;
  readonly written: string | null;
}

/** Areas to two figures: what drains where is not known closer. */
export const METRIC: ColdUnits = {
  depth: (depthM) => `${depthM.toFixed(1)} m`,
  area: (areaM2) => `${Number((areaM2 / 10_000).toPrecision(2))} ha`,
};

/** For a person to read. */
export function coldText({ siteName, year, layout, terrainCellM, ranks, frosts, written }: ColdPage): string {
  const lines = [
    `${siteName}, cold air on a still night, with what stands in year ${year}${layout ? ` of ${layout}` : ''}`,
    ...ranks.map(({ rank, sentence }) => `  ${rank}. ${sentence}`),
    coldCaveat(terrainCellM),
    ...frosts.sentences,
    ...(written ? [`Written: ${written}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** The same as JSON: metres, square metres, shares 0 to 1. */
export function coldJson({ siteName, year, layout, cellM, ranks, frosts }: ColdPage): string {
  const answer = {
    site: siteName,
    year,
    layout,
    cellM,
    fields: ranks.map(({ id, name, areaM2, rank, holdsSome, cold, sentence }) => ({
      id,
      name,
      areaM2,
      rank,
      holdsSome,
      ...cold,
      sentence,
    })),
    frosts: { ...frosts.found, said: frosts.sentences },
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}
