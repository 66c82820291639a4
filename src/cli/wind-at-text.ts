import type { LonLat } from '../geo/frame.ts';
import type { WindHere } from '../jobs/run-shelter-at.ts';
import { lookUp } from '../numeric/even-table.ts';
import type { SiteEvaporation } from '../scene/site-evaporation.ts';
import { reliefThanOpen } from '../sheets/evaporation-words.ts';
import { awayWords, cutWords, ownedWords, PARTS_EXPLAINED, shelterPart } from '../sheets/wind-here-words.ts';
import { nearestPoint } from '../units/compass.ts';
import type { BySeason } from '../wind/shelter-at-types.ts';

export interface WindAtPage {
  readonly siteName: string;
  readonly year: number;
  readonly calendarYear: number;
  readonly layout: string | null;
  readonly lonLat: LonLat;
  readonly assumed: readonly string[];
  readonly found: WindHere;
  readonly evaporation: SiteEvaporation;
}

const SEASONS = ['growing season', 'rest of the year', 'year'] as const;
const BANDS = [0, 1, 2] as const;
const percent = (share: number): string => `${Math.round(100 * share)} %`;
const depth = (depthMm: number): string => `${Math.round(depthMm)} mm`;
const metres = (lengthM: number): string => `${lengthM.toFixed(1)} m`;

/** The answer for a person: the wind by season, from each direction, and what each thing is worth. */
export function windAtText({
  siteName,
  year,
  calendarYear,
  layout,
  lonLat,
  assumed,
  found,
  evaporation,
}: WindAtPage): string {
  const { at, things } = found;
  const head = `${siteName}, year ${year} (season of ${calendarYear})${
    layout === null ? '' : `, layout ${layout}`
  }: the wind at ${lonLat[1].toFixed(6)}, ${lonLat[0].toFixed(6)}, ${at.readingHeightM} m above the ground`;
  if (Number.isNaN(at.windShare[2]))
    return `${head}\nA building stands on this spot, or its ground is not known.\n`;
  const lines = [
    head,
    ...BANDS.map(
      (band) =>
        `${capital(SEASONS[band])}: ${cutWords(at.windShare[band])}; ${Math.round(at.galeHours[band])} hours of gale`,
    ),
    `From (hours of the year, open wind at ${at.climateHeightM} m; growing season, rest of the year, year):`,
    ...at.sectors.map(({ fromDeg, frequency, openSpeedMps, share, by }) => {
      const named = by.map(
        ({ thing, distanceM, heightM, cut }) =>
          `${things[thing].label} ${awayWords(distanceM, heightM, metres)}${by.length > 1 ? ` (alone ${percent(cut[2])})` : ''}`,
      );
      return `  ${nearestPoint(fromDeg).short} ${fromDeg.toFixed(1)}° (${percent(frequency[2])}, ${openSpeedMps[2].toFixed(1)} m/s): ${share
        .map(cutWords)
        .join(
          ', ',
        )}${named.length > 0 ? ` by ${named.join(' and ')}` : changed(share) ? ' by trees and the lie of the land' : ''}`;
    }),
    'If one thing alone were gone (growing season, rest of the year, year; part of the year’s shelter):',
    ...(at.things.length === 0 ? ['  nothing shelters this spot by itself'] : []),
    ...at.things.map(({ thing, comesBack }) => {
      const part = shelterPart(comesBack[2], at.windShare[2]);
      const left = BANDS.map((band) => cutWords(at.windShare[band] + comesBack[band])).join(', ');
      return `  ${ownedWords(things[thing].label, things[thing].owner)}: ${left}${part === null ? '' : `; ${percent(part)}`}`;
    }),
    `  without any belt, wood, wall or building: ${at.shareWithoutThings.map(cutWords).join(', ')}, by trees and the lie of the land`,
    ...(at.things.length > 1 ? [PARTS_EXPLAINED] : []),
    waterLine(at.windShare[0], evaporation),
    ...assumed.map((assumption) => `Assumed: ${assumption}`),
  ];
  return `${lines.join('\n')}\n`;
}

function waterLine(share: number, { curve, missing }: SiteEvaporation): string {
  if (!curve) return missing;
  const hereMm = lookUp(curve.seasonMm, share);
  return `Grass gives off ${depth(hereMm)} in the growing season, ${reliefThanOpen(lookUp(curve.seasonMm, 1), hereMm, depth)}`;
}

const round = (value: number): number | null =>
  Number.isFinite(value) ? Math.round(value * 10_000) / 10_000 : null;
const bySeason = ([growing, rest, year]: BySeason) => ({
  growing: round(growing),
  rest: round(rest),
  year: round(year),
});

/** The same as data; a figure that is not known is null. */
export function windAtJson(page: WindAtPage): string {
  const { at, things } = page.found;
  const [lon, lat] = page.lonLat;
  const { curve } = page.evaporation;
  const named = (thing: number) => {
    const { id, kind, label, owner } = things[thing];
    return { id, kind, label, owner };
  };
  const answer = {
    site: page.siteName,
    year: page.year,
    calendarYear: page.calendarYear,
    layout: page.layout,
    at: { lat, lon },
    heightM: at.readingHeightM,
    assumed: page.assumed,
    windShare: bySeason(at.windShare),
    galeHours: bySeason(at.galeHours),
    evaporationSeasonMm: curve
      ? { open: round(lookUp(curve.seasonMm, 1)), here: round(lookUp(curve.seasonMm, at.windShare[0])) }
      : null,
    windShareWithoutThings: bySeason(at.shareWithoutThings),
    openWindHeightM: at.climateHeightM,
    sectors: at.sectors.map(({ fromDeg, frequency, openSpeedMps, share, shareWithoutThings, by }) => ({
      fromDeg,
      frequency: bySeason(frequency),
      openSpeedMps: bySeason(openSpeedMps),
      windShare: bySeason(share),
      windShareWithoutThings: bySeason(shareWithoutThings),
      by: by.map(({ thing, distanceM, heightM, cut }) => ({
        ...named(thing),
        distanceM: round(distanceM),
        distanceHeights: round(distanceM / heightM),
        heightM: round(heightM),
        cutAlone: bySeason(cut),
      })),
    })),
    things: at.things.map(({ thing, comesBack }) => ({ ...named(thing), comesBack: bySeason(comesBack) })),
  };
  return `${JSON.stringify(answer, null, 2)}\n`;
}

/** Whether the wind of a direction is said to be other than open in any season. */
const changed = (share: BySeason): boolean => share.some((each) => cutWords(each) !== 'open');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
