/** What is known of a belt or block that its findings are made of. */
import { leafShareOfDays } from '../growth/leaf-calendar.ts';
import { growingDays } from '../scene/growing-days.ts';
import type { SceneOptions } from '../scene/options.ts';
import { siteCentre } from '../scene/site-ground.ts';
import { type SiteWind, siteWind } from '../scene/site-wind.ts';
import type { WindbreakStand } from '../scene/stand-at-year.ts';
import { takenField } from '../site/chosen-features.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { distanceToLineM } from '../site/plane-geometry.ts';
import { type BeltPurpose, woodyStandDefaults } from '../site/records/belt.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { type EndGap, endGaps, type PathGap, pathGaps } from './belt-gaps.ts';
import { type BeltShape, beltShapes, isPlanned } from './belt-shape.ts';
import { type BeltSide, beltSide, pointsOnField } from './belt-side.ts';
import { type Mixture, mixtureOf } from './mixture.ts';

/** The leaves of a belt over one season, and the season's wind. */
export interface SeasonOfBelt {
  /** Days of the season on which it is less than half in leaf. */
  readonly bareDays: number;
  readonly days: number;
  /** Mean wind of the season in the open, m/s. */
  readonly meanSpeedMps: number;
}

export interface BeltFacts {
  readonly id: FeatureId;
  readonly label: string;
  readonly kind: 'belt' | 'block';
  readonly planned: boolean;
  /** Null where the file does not say. */
  readonly owner: string | null;
  readonly purpose: BeltPurpose;
  readonly mixture: Mixture;
  /** Belts of another species that stand close along it. */
  readonly otherRows: readonly string[];
  /** As it stands when it is judged: twenty years after planting, or in year 20 where it stands already. */
  readonly heightM: number;
  readonly baseM: number;
  /** Share of daylight through its whole width; density is 1 less that. */
  readonly porosityOn: number;
  readonly porosityOff: number;
  readonly lengthM: number;
  /** Belts that carry it on past its ends, within one of its heights, with their lengths. */
  readonly carriedOnBy: readonly { readonly label: string; readonly lengthM: number }[];
  readonly gaps: readonly EndGap[];
  readonly paths: readonly PathGap[];
  readonly fieldName: string;
  /** Null: no wind that crosses it reaches the field. */
  readonly side: BeltSide | null;
  readonly growing: SeasonOfBelt;
  readonly rest: SeasonOfBelt;
}

/** Rows at most so far apart, between their middles, stand as one belt. Common practice, no source. */
const ONE_BELT_M = 8;
/** Places looked at on each straight piece of a line. */
const BESIDE_STEPS = 20;

/**
 * Facts of every belt and block of a layout, for the field that is judged by.
 * Left out: what is gone when belts are judged.
 */
export function beltFacts(
  document: SiteDocument,
  options: SceneOptions,
  field: FieldFeature | null = fieldJudgedBy(document),
): BeltFacts[] {
  const { frame } = options;
  const wind = siteWind(document, options.weather);
  const points = field ? pointsOnField(field, frame) : [];
  const shapes = beltShapes(document, frame, { ...options, felled: null });
  return shapes.flatMap((shape): BeltFacts[] => {
    const { feature, judged, label } = shape;
    if (!judged) return [];
    const { properties } = feature;
    const gaps = endGaps(document, shape, frame, options);
    return [
      {
        id: feature.id,
        label,
        kind: properties.kind,
        planned: isPlanned(feature),
        owner: properties.owner?.trim() || null,
        purpose: properties.purpose ?? woodyStandDefaults.purpose,
        mixture: mixtureOf(document, feature),
        otherRows: otherRows(shape, shapes),
        heightM: judged.heightM,
        baseM: judged.baseM,
        porosityOn: judged.porosityOn,
        porosityOff: winterPorosity(judged),
        lengthM: shape.lengthM,
        carriedOnBy: carriedOn(shape, shapes, gaps),
        gaps,
        paths: pathGaps(document, shape, frame, options.layout),
        fieldName: field?.properties.name ?? 'the field',
        side: field ? beltSide(shape, points, frame.convergenceRad, wind.climate) : null,
        ...seasons(document, shape, wind),
      },
    ];
  });
}

/** As it is seen in winter, with what leaves hang on then. */
const winterPorosity = ({ porosityOn, porosityOff, calendar: { winterShare } }: WindbreakStand): number =>
  porosityOn ** winterShare * porosityOff ** (1 - winterShare);

/** The field that is taken, otherwise the first. */
export const fieldJudgedBy = (document: SiteDocument): FieldFeature | null =>
  takenField(document) ??
  document.features.find((feature): feature is FieldFeature => feature.properties.kind === 'field') ??
  null;

function seasons(
  document: SiteDocument,
  { judged }: BeltShape,
  { facts }: SiteWind,
): Record<'growing' | 'rest', SeasonOfBelt> {
  const [, latDeg] = siteCentre(document);
  const growing = growingDays(document.site, latDeg, document.site.baseYear);
  const leaf =
    judged && !judged.calendar.evergreen ? leafShareOfDays(judged.calendar, latDeg, growing.length) : null;
  const season = (wanted: number, meanSpeedMps: number): SeasonOfBelt => {
    let days = 0;
    let bareDays = 0;
    growing.forEach((is, day) => {
      if (is !== wanted) return;
      days++;
      if (leaf && leaf[day] < 0.5) bareDays++;
    });
    return { bareDays, days, meanSpeedMps };
  };
  return { growing: season(1, facts.growing.meanSpeedMps), rest: season(0, facts.rest.meanSpeedMps) };
}

/** Names of belts of other species most of whose length lies close along this one. */
function otherRows(shape: BeltShape, shapes: readonly BeltShape[]): string[] {
  if (shape.isArea) return [];
  const own = shape.feature.properties.species;
  return shapes
    .filter(
      (other) =>
        other !== shape &&
        !other.isArea &&
        other.judged !== null &&
        other.feature.properties.species !== own &&
        other.lengthM >= shape.lengthM / 2 &&
        lengthBesideM(other.line, shape.line) >= other.lengthM / 2,
    )
    .map(({ label }) => label);
}

/** How much of a line lies close along another, metres. */
function lengthBesideM(line: BeltShape['line'], beside: BeltShape['line']): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const stepM = Math.hypot(dx, dy) / BESIDE_STEPS;
    for (let k = 0; k < BESIDE_STEPS; k++) {
      const t = (k + 0.5) / BESIDE_STEPS;
      if (distanceToLineM([a[0] + t * dx, a[1] + t * dy], beside) <= ONE_BELT_M) sum += stepM;
    }
  }
  return sum;
}

function carriedOn(shape: BeltShape, shapes: readonly BeltShape[], gaps: readonly EndGap[]) {
  const heightM = shape.judged?.heightM ?? 0;
  if (shape.isArea) return [];
  const ends = [shape.line[0], shape.line[shape.line.length - 1]];
  const bridged = new Set(gaps.filter(({ widthM }) => widthM <= heightM).map(({ toId }) => toId));
  return shapes
    .filter(
      (other) =>
        other !== shape &&
        !other.isArea &&
        other.judged !== null &&
        // Half as tall shelters half as far: it does not carry the belt on.
        other.judged.heightM >= heightM / 2 &&
        (bridged.has(other.feature.id) || meets(ends, other)),
    )
    .map(({ label, lengthM }) => ({ label, lengthM }));
}

/** Whether one of its ends touches an end of another. */
const meets = (ends: BeltShape['line'], { line }: BeltShape): boolean =>
  [line[0], line[line.length - 1]].some((p) => ends.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1));
