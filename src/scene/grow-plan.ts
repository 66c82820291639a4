import type { Frame, LonLat } from '../geo/frame.ts';
import { destination } from '../geo/geodesic.ts';
import { ringToLonLat } from '../geo/rasterise.ts';
import type { SiteDocument } from '../site/document.ts';
import { isWoody, type Woody } from '../site/woody.ts';
import type { StandingTree } from './build-crowns.ts';
import { footprintPieces, type StandingWindbreak } from './build-prisms.ts';
import type { GrownPlan, GrownThing } from './grown-plan.ts';
import type { GrowthMoment } from './options.ts';
import { kindAtYear } from './species-at-year.ts';
import { outlineOf } from './strip-pieces.ts';
import { type Standing, standingAt } from './things.ts';

const CIRCLE_CORNERS = 36;

function circleAround(centre: LonLat, radiusM: number): LonLat[] {
  const ring = Array.from({ length: CIRCLE_CORNERS }, (_, i) =>
    destination(centre, (-360 * i) / CIRCLE_CORNERS, radiusM),
  );
  return [...ring, ring[0]];
}

function footprintOf(frame: Frame, windbreak: StandingWindbreak): LonLat[][] {
  const { geometry } = windbreak.feature;
  if (geometry.type === 'Polygon')
    return geometry.coordinates.map((ring) => ring.map(([lon, lat]): LonLat => [lon, lat]));
  return outlineOf(footprintPieces(frame, windbreak)).flatMap((rings) =>
    rings.map((ring) => {
      const lonLat = ringToLonLat(frame, ring);
      return [...lonLat, lonLat[0]];
    }),
  );
}

type Grown = Omit<GrownThing, 'heightBandM' | 'radiusBandM'>;

function* grown(
  standing: Standing,
  frame: Frame | null,
  speciesOf: (feature: Woody) => string | undefined,
): Generator<Grown> {
  const nameOf = (thing: number) => ({ id: standing.things[thing].id, label: standing.things[thing].label });
  for (const tree of standing.trees) {
    const { stand, feature }: StandingTree = tree;
    const [lon, lat] = feature.geometry.coordinates;
    yield {
      ...nameOf(tree.thing),
      kind: 'tree',
      species: speciesOf(feature),
      heightM: stand.heightM,
      baseM: stand.baseM,
      radiusM: stand.radiusM,
      footprint: frame ? [circleAround([lon, lat], stand.radiusM)] : [],
    };
  }
  for (const windbreak of standing.breaks) {
    const { stand, feature } = windbreak;
    yield {
      ...nameOf(windbreak.thing),
      kind: feature.properties.kind,
      ...(isWoody(feature) ? { species: speciesOf(feature) } : {}),
      heightM: stand.heightM,
      baseM: stand.baseM,
      radiusM: 0,
      footprint: frame ? footprintOf(frame, windbreak) : [],
    };
  }
  for (const building of standing.buildings) {
    yield {
      ...nameOf(building.thing),
      kind: 'building',
      heightM: building.heightM,
      baseM: 0,
      radiusM: 0,
      footprint: building.feature.geometry.coordinates.map((ring) =>
        ring.map(([lon, lat]): LonLat => [lon, lat]),
      ),
    };
  }
}

/** What stands in a year, its size and its footprint, with the slow-to-fast band of each size. */
export function growPlan(document: SiteDocument, options: GrowthMoment & { frame: Frame }): GrownPlan {
  const speciesOf = (feature: Woody) =>
    kindAtYear(document, feature, document.site.baseYear + options.year).name;
  const sizesAt = (pace: GrowthMoment['pace']) =>
    new Map(
      [...grown(standingAt(document, { ...options, pace }), null, speciesOf)].map((thing) => [
        thing.id,
        thing,
      ]),
    );
  const slow = sizesAt('slow');
  const fast = sizesAt('fast');
  const things = [...grown(standingAt(document, options), options.frame, speciesOf)].map(
    (thing): GrownThing => {
      const low = slow.get(thing.id) ?? thing;
      const high = fast.get(thing.id) ?? thing;
      return {
        ...thing,
        heightBandM: [low.heightM, high.heightM],
        radiusBandM: [low.radiusM, high.radiusM],
      };
    },
  );
  return { year: options.year, things };
}
