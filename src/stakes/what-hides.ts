import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_FORMS,
  CROWN_GROUND,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
} from '../crowns/crown-set.ts';
import { crownPathM } from '../crowns/path-length.ts';
import { prismPathM } from '../crowns/prism-path.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../crowns/prism-set.ts';
import { awayFromSun, type Point3, type ShadowSun } from '../light/shadow-tip.ts';
import { dayOfYear } from '../outside/moment-of-date.ts';
import { plantedBy } from '../outside/planted-by.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { buildCrowns } from '../scene/build-crowns.ts';
import { buildPrisms } from '../scene/build-prisms.ts';
import { LeafClasses } from '../scene/leaf-phases.ts';
import { standingAt } from '../scene/things.ts';
import type { FeatureId } from '../site/document.ts';

/** Less sun than this left, and the tip of another shadow cannot be made out. */
const LEAST_SUN_SHARE = 0.5;
/** The ray to the sun is tested so far above the edge that casts the tip: within it a thing does not hide its own. */
const CLEAR_OF_ITSELF_M = 0.3;

/** What takes the sun from a tip before the thing whose tip it is: its label, or null. */
export type HiddenBy = (tip: Point3, sun: ShadowSun) => string | null;

/**
 * Everything that stands on a day, ready to be asked what hides the tip of one thing's shadow: other things, and the
 * thing's own body where another part of it reaches further.
 * @param date YYYY-MM-DD
 */
export function whatHides(site: SiteOutdoors, own: FeatureId, date: string): HiddenBy {
  const { document, frame, ground, layout } = site;
  const year = Number(date.slice(0, 4));
  const all = standingAt(document, { year: year - document.site.baseYear, layout, pace: 'usual' });
  const isThere = plantedBy(document, year);
  const classes = new LeafClasses();
  const crowns = buildCrowns(
    all.trees.filter(({ feature }) => isThere(feature)),
    frame,
    ground,
    classes,
  );
  const prisms = buildPrisms(
    all.breaks.filter(({ feature }) => isThere(feature)),
    all.buildings,
    frame,
    ground,
    classes,
  );
  const phases = classes.phases(frame.centreLonLat[1], 366);
  const firstShare = phases.phaseOfDay[dayOfYear(date)] * phases.classCount;
  const depth = (on: number, off: number, leafClass: number) =>
    off + (on - off) * phases.leafShare[firstShare + leafClass];

  return (tip, sun) => {
    const [ex, ey] = awayFromSun(sun);
    const [ux, uy, uz] = [
      -ex * Math.cos(sun.altitudeRad),
      -ey * Math.cos(sun.altitudeRad),
      Math.sin(sun.altitudeRad),
    ];
    const depths = new Map<number, number>();
    const add = (thing: number, more: number) => {
      if (more > 0) depths.set(thing, (depths.get(thing) ?? 0) + more);
    };
    const liftOf = (thing: number) => (all.things[thing].id === own ? CLEAR_OF_ITSELF_M : 0);
    for (let i = 0; i < crowns.count; i++) {
      if (all.things[crowns.thing[i]].id === own) continue;
      const v = crowns.values.subarray(i * CROWN_STRIDE, (i + 1) * CROWN_STRIDE);
      const pathM = crownPathM(
        CROWN_FORMS[crowns.form[i]],
        tip.xM - v[CROWN_X],
        tip.yM - v[CROWN_Y],
        tip.zM - v[CROWN_GROUND],
        ux,
        uy,
        uz,
        v[CROWN_BASE],
        v[CROWN_TOP],
        v[CROWN_RADIUS],
      );
      add(crowns.thing[i], pathM * depth(v[CROWN_DEPTH_ON], v[CROWN_DEPTH_OFF], crowns.leafClass[i]));
    }
    for (let i = 0; i < prisms.count; i++) {
      const thing = prisms.thing[i];
      const pathM = prismPathM(prisms, i, tip.xM, tip.yM, tip.zM + liftOf(thing), ux, uy, uz);
      const v = i * PRISM_STRIDE;
      add(
        thing,
        pathM > 0 && prisms.solid[i] === 1
          ? Number.POSITIVE_INFINITY
          : pathM *
              depth(
                prisms.values[v + PRISM_DEPTH_ON],
                prisms.values[v + PRISM_DEPTH_OFF],
                prisms.leafClass[i],
              ),
      );
    }
    let total = 0;
    let most: { thing: number; depth: number } | null = null;
    for (const [thing, found] of depths) {
      total += found;
      if (!most || found > most.depth) most = { thing, depth: found };
    }
    return most && Math.exp(-total) < LEAST_SUN_SHARE ? all.things[most.thing].label : null;
  };
}
