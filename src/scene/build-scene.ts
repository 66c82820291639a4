import type { GrownThings, LightScene } from '../light/light-types.ts';
import type { SiteDocument } from '../site/document.ts';
import type { ShelterScene } from '../wind/shelter-types.ts';
import { siteClimate } from '../wind/site-climate.ts';
import { buildBarriers } from './build-barriers.ts';
import { buildCrowns } from './build-crowns.ts';
import { buildPrisms } from './build-prisms.ts';
import { growingDays } from './growing-days.ts';
import { LeafClasses } from './leaf-phases.ts';
import type { SceneOptions, SceneThing } from './options.ts';
import { siteCentre } from './site-ground.ts';
import { siteRelief } from './site-relief.ts';
import { siteSky } from './site-sky.ts';
import { siteSurroundings } from './site-surface.ts';
import { standingAt } from './things.ts';

export interface Built<Scene> {
  readonly scene: Scene;
  /** What the scene's `thing` indices stand for. */
  readonly things: readonly SceneThing[];
  /** What had to be assumed because the file is silent, one phrase each. */
  readonly assumed: readonly string[];
}

/** All that stands in the chosen year and takes light. @param leafClasses gathers the leaf calendars that occur. */
export function shadingThings(
  document: SiteDocument,
  options: SceneOptions,
  leafClasses: LeafClasses,
): GrownThings & Pick<Built<LightScene>, 'things'> {
  const { frame, ground } = options;
  const standing = standingAt(document, options);
  return {
    crowns: buildCrowns(standing.trees, frame, ground, leafClasses),
    prisms: buildPrisms(standing.breaks, standing.buildings, frame, ground, leafClasses),
    things: standing.things,
  };
}

/**
 * What the light engine needs: everything that stands in the chosen year, the ground, the leaves and the sky.
 * @param leafClasses those that other years' things hang on as well; absent: only this year's.
 */
export function lightScene(
  document: SiteDocument,
  options: SceneOptions,
  leafClasses: LeafClasses = new LeafClasses(),
): Built<LightScene> {
  const { frame, ground } = options;
  const [lonDeg, latDeg] = siteCentre(document);
  const calendarYear = document.site.baseYear + options.year;
  const { crowns, prisms, things } = shadingThings(document, options, leafClasses);
  const around = siteSurroundings(document, options, leafClasses);
  const growingDay = growingDays(document.site, latDeg, calendarYear);
  const { sky, assumed } = siteSky(document, options.weather, calendarYear);
  return {
    scene: {
      latDeg,
      lonDeg,
      convergenceRad: frame.convergenceRad,
      calendarYear,
      timeZone: document.site.timeZone,
      growingDay,
      sky,
      ground,
      crowns,
      prisms,
      leaf: leafClasses.phases(latDeg, growingDay.length),
      surroundings: around.surroundings,
    },
    things,
    assumed: [...assumed, ...around.assumed],
  };
}

/** What the shelter engine needs: windbreaks, trees, the ground and its shape, the leaves and the wind climate. */
export function shelterScene(document: SiteDocument, options: SceneOptions): Built<ShelterScene> {
  const { frame, ground } = options;
  const [, latDeg] = siteCentre(document);
  const standing = standingAt(document, options);
  const leafClasses = new LeafClasses();
  const barriers = buildBarriers(standing.breaks, standing.buildings, frame, leafClasses);
  const crowns = buildCrowns(standing.trees, frame, ground, leafClasses);
  const growingDay = growingDays(document.site, latDeg, document.site.baseYear + options.year);
  const { climate, assumed } = siteClimate(document.site.wind, options.weather, growingDay);
  return {
    scene: {
      convergenceRad: frame.convergenceRad,
      growingDay,
      ground,
      barriers,
      crowns,
      relief: siteRelief(ground),
      leaf: leafClasses.phases(latDeg, growingDay.length),
      climate,
    },
    things: standing.things,
    assumed,
  };
}
