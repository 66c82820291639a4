import { type LonLat, toLocal } from '../geo/frame.ts';
import { gridScaleAt } from '../geo/grid-scale.ts';
import { LEAF_CALENDARS, type LeafCalendar, leafShareOfDays } from '../growth/leaf-calendar.ts';
import type { ShadowCaster } from '../light/shadow-tip.ts';
import { dayOfYear, momentOfDate } from '../outside/moment-of-date.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { groundAt } from '../scene/ground-at.ts';
import type { GrowthMoment } from '../scene/options.ts';
import {
  beltOrBlockAtYear,
  buildingHeightM,
  type TreeStand,
  treeAtYear,
  wallAtYear,
} from '../scene/stand-at-year.ts';
import { labelOf } from '../scene/things.ts';
import { isOfKind } from '../site/chosen-features.ts';
import type { FeatureId, FeatureOf, SiteDocument } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type CastingLine, type CastingPlace, castingPlaces } from './casting-places.ts';
import { canBeStaked, type StakedFeature, type StakedKind } from './staked-feature.ts';

/** One thing whose shadow is watched, as it stands on a day. */
export interface StakedThing {
  readonly id: FeatureId;
  readonly kind: StakedKind;
  readonly label: string;
  readonly heightM: number;
  /** Calendar year whose season's end the height is of. */
  readonly heightYear: number;
  /** Null for anything but a tree. */
  readonly crownForm: TreeStand['form'] | null;
  /** Share of full leaf on the day; 1 for what has no leaves. */
  readonly leafShare: number;
  readonly places: readonly CastingPlace[];
  /** Length of its line or outline, along which `alongM` counts; 0 for a tree. */
  readonly lineM: number;
  readonly middle: LonLat;
  /** Metres of the frame a true metre. */
  readonly localPerM: number;
  /** What casts the shadow at a place along it, at its own or another height. */
  readonly casterAt: (alongM: number | null, heightM?: number) => ShadowCaster;
}

/** How it stands: its height, the width of a belt, its leaves, and its crown at any height. */
interface Stand {
  readonly heightM: number;
  readonly widthM: number;
  readonly calendar: LeafCalendar;
  readonly treeOf: ((heightM: number) => TreeStand) | null;
}

const gone = (label: string): never => {
  throw new BadInputError(`${label} does not stand on that day; expected a thing that casts a shadow then.`);
};

function standOf(document: SiteDocument, feature: StakedFeature, moment: GrowthMoment, label: string): Stand {
  if (isOfKind(feature, 'building'))
    return { heightM: buildingHeightM(feature), widthM: 0, calendar: LEAF_CALENDARS.evergreen, treeOf: null };
  if (isOfKind(feature, 'wall')) {
    const always = {
      ...feature,
      properties: { ...feature.properties, fromYear: undefined, toYear: undefined },
    };
    const { heightM, calendar } = wallAtYear(document, always, moment) ?? gone(label);
    return { heightM, widthM: 0, calendar, treeOf: null };
  }
  if (isOfKind(feature, 'tree')) {
    const { removedYear: _, ...properties } = feature.properties;
    const natural = treeAtYear(document, { ...feature, properties }, moment) ?? gone(label);
    const measuredYear = document.site.baseYear + moment.year;
    return {
      ...natural,
      widthM: 0,
      treeOf: (heightM) =>
        heightM === natural.heightM
          ? natural
          : (treeAtYear(
              document,
              { ...feature, properties: { ...properties, heightM, measuredYear } },
              moment,
            ) ?? natural),
    };
  }
  const { removedYear: _, ...properties } = feature.properties;
  const still = { ...feature, properties } as FeatureOf<'belt' | 'block'>;
  return { ...(beltOrBlockAtYear(document, still, moment) ?? gone(label)), treeOf: null };
}

/**
 * The thing as it stands on a day: as it was measured, and grown by the seasons that have ended since.
 * @param date YYYY-MM-DD
 * @throws BadInputError for an id that is not there, a kind that casts no shadow to stake, or what does not stand then.
 */
export function stakedThing(site: SiteOutdoors, id: FeatureId, date: string): StakedThing {
  const { document, frame, layout } = site;
  const feature = featureById(document, id);
  if (!canBeStaked(feature))
    throw new BadInputError(
      `Feature ${JSON.stringify(id)} is a ${feature.properties.kind}; expected a tree, belt, block, wall or building.`,
    );
  const label = labelOf(document, feature);
  const moment = momentOfDate(document, feature, date, { label, does: 'casts a shadow' }, layout);
  const stand = standOf(document, feature, moment, label);
  const line = castingPlaces(frame, feature, stand.widthM);
  return {
    id,
    kind: feature.properties.kind,
    label,
    heightM: stand.heightM,
    heightYear: document.site.baseYear + moment.year,
    crownForm: stand.treeOf ? stand.treeOf(stand.heightM).form : null,
    leafShare: leafShareOfDays(stand.calendar, line.middle[1], 366)[dayOfYear(date)],
    places: line.places,
    lineM: line.lineM,
    middle: line.middle,
    localPerM: gridScaleAt(frame, line.middle),
    casterAt: (alongM, heightM = stand.heightM) =>
      stand.treeOf
        ? crownCaster(site, line, stand.treeOf(heightM))
        : pointsCaster(site, line, alongM, heightM, isOfKind(feature, 'building')),
  };
}

function crownCaster(
  { frame, ground }: SiteOutdoors,
  { middle }: CastingLine,
  tree: TreeStand,
): ShadowCaster {
  const [xM, yM] = toLocal(frame, middle);
  return {
    casts: 'crown',
    form: tree.form,
    xM,
    yM,
    groundM: groundAt(ground, xM, yM),
    baseM: tree.baseM,
    topM: tree.heightM,
    radiusM: tree.radiusM,
  };
}

/** A building is a level box on the mean ground of its corners; the tops of all else follow the ground. */
function pointsCaster(
  { ground }: SiteOutdoors,
  line: CastingLine,
  alongM: number | null,
  heightM: number,
  level: boolean,
): ShadowCaster {
  const corners = level ? line.pointsAt(null) : [];
  const levelM = corners.reduce((sum, [x, y]) => sum + groundAt(ground, x, y), 0) / corners.length;
  return {
    casts: 'points',
    points: line.pointsAt(alongM).map(([xM, yM]) => ({
      xM,
      yM,
      zM: (level ? levelM : groundAt(ground, xM, yM)) + heightM,
    })),
  };
}
