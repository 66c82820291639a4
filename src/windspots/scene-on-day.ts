import type { Barrier } from '../crowns/barrier.ts';
import type { LeafPhases } from '../crowns/leaf-phases.ts';
import { gridScaleAt } from '../geo/grid-scale.ts';
import { dayOfYear, momentOfDate, momentOnDay } from '../outside/moment-of-date.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { buildBarriers } from '../scene/build-barriers.ts';
import { buildCrowns } from '../scene/build-crowns.ts';
import { LeafClasses } from '../scene/leaf-phases.ts';
import type { GrowthMoment, SceneThing } from '../scene/options.ts';
import { siteRelief } from '../scene/site-relief.ts';
import { beltOrBlockAtYear, type WindbreakStand, wallAtYear } from '../scene/stand-at-year.ts';
import { labelOf, standingAt } from '../scene/things.ts';
import { isOfKind } from '../site/chosen-features.ts';
import type { FeatureId } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';
import { canShelter, type ShelteringFeature } from './sheltering-feature.ts';

/** All that stands on one day in the leaf of that day, and one belt or wall among it. */
export interface SceneOnDay {
  /** Its wind is still to be set. */
  readonly scene: Omit<ShelterScene, 'climate'>;
  readonly things: readonly SceneThing[];
  readonly feature: ShelteringFeature;
  readonly label: string;
  /** The belt itself, and the calendar year whose season's end its size is of. */
  readonly belt: Barrier;
  readonly beltYear: number;
  readonly leafShare: number;
  /** Metres of the frame a true metre. */
  readonly localPerM: number;
  /** The belt as it would stand at another pace of growth, or with foliage at an end of its published range. */
  readonly beltAt: (change: Partial<Pick<GrowthMoment, 'pace' | 'foliage'>>) => Barrier;
}

/**
 * @param date YYYY-MM-DD.
 * @throws BadInputError when the thing is no belt or wall, or does not stand on that day.
 */
export function sceneOnDay(site: SiteOutdoors, id: FeatureId, date: string): SceneOnDay {
  const { document, frame, ground, layout } = site;
  const feature = featureById(document, id);
  if (!canShelter(feature))
    throw new BadInputError(
      `Feature ${JSON.stringify(id)} is a ${feature.properties.kind}; expected a belt or a wall, fence or net.`,
    );
  const label = labelOf(document, feature);
  const moment = momentOfDate(document, feature, date, { label, does: 'shelters' }, layout);
  const standing = standingAt(document, moment, (each) =>
    each.id === id ? moment : momentOnDay(document, each, date, layout),
  );
  const classes = new LeafClasses();
  const barriers = buildBarriers(standing.breaks, standing.buildings, frame, classes);
  const crowns = buildCrowns(standing.trees, frame, ground, classes);
  const own = standing.breaks.find((each) => each.feature.id === id);
  const belt = barriers.find(({ thing }) => own && thing === own.thing);
  if (!own || !belt)
    throw new BadInputError(`${label} is not there on ${date}; expected a belt or wall that stands.`);
  const leaf = leafOfDay(classes.phases(frame.centreLonLat[1], 366), date);
  const [lon, lat] = feature.geometry.coordinates[0];
  const beltAt: SceneOnDay['beltAt'] = (change) => {
    const stand = standOf(site, feature, { ...moment, ...change }) ?? own.stand;
    return {
      ...belt,
      heightM: belt.heightM.map(() => stand.heightM),
      porosityOn: stand.porosityOn,
      porosityOff: stand.porosityOff,
    };
  };
  return {
    scene: {
      convergenceRad: frame.convergenceRad,
      growingDay: new Uint8Array(leaf.phaseOfDay.length).fill(1),
      ground,
      barriers,
      crowns,
      relief: siteRelief(ground),
      leaf,
    },
    things: standing.things,
    feature,
    label,
    belt,
    beltYear: document.site.baseYear + moment.year,
    leafShare: leaf.leafShare[belt.leafClass],
    localPerM: gridScaleAt(frame, [lon, lat]),
    beltAt,
  };
}

const standOf = (
  { document }: SiteOutdoors,
  feature: ShelteringFeature,
  moment: GrowthMoment,
): WindbreakStand | null =>
  isOfKind(feature, 'wall')
    ? wallAtYear(document, feature, moment)
    : beltOrBlockAtYear(
        document,
        feature as Exclude<ShelteringFeature, { properties: { kind: 'wall' } }>,
        moment,
      );

/** A year that is this one day throughout. */
function leafOfDay({ classCount, phaseOfDay, leafShare }: LeafPhases, date: string): LeafPhases {
  const first = phaseOfDay[dayOfYear(date)] * classCount;
  return {
    classCount,
    phaseCount: 1,
    phaseOfDay: new Uint8Array(phaseOfDay.length),
    leafShare: leafShare.slice(first, first + classCount),
  };
}

/** Places of a belt's line, local metres. */
export const lineOf = ({ xyM }: Barrier): [number, number][] =>
  Array.from({ length: xyM.length / 2 }, (_, i) => [xyM[2 * i], xyM[2 * i + 1]]);
