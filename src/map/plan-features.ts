import type { FeatureId, FeatureOf, SiteFeature } from '../site/document.ts';
import type { AppState } from '../state/model.ts';
import { footprintGeometry } from './footprint.ts';
import { middleOfLine, northernSide, placeInside } from './label-places.ts';
import { plantMark } from './plant-mark.ts';

type Thing = AppState['grown']['things'][number];
type Drawn = GeoJSON.FeatureCollection<GeoJSON.Geometry, Record<string, unknown>>;

/** What the plan is drawn from: one collection for each of the map's sources. */
export interface PlanFeatures {
  /** Fields, patches, paths, keep-outs, services, plantings and the axes of belts and walls, as drawn by hand. */
  readonly outlines: Drawn;
  /** Belts, blocks, walls and buildings on the ground in the chosen year. */
  readonly stands: Drawn;
  /** Crowns at their spread in the chosen year. */
  readonly crowns: Drawn;
  /** Stems with their tags, and readings taken outside. */
  readonly points: Drawn;
  /** Names of areas. */
  readonly names: Drawn;
}

const KIND_NAMES: Record<SiteFeature['properties']['kind'], string> = {
  field: 'Field',
  belt: 'Belt',
  block: 'Block',
  tree: 'Tree',
  building: 'Building',
  wall: 'Wall',
  patch: 'Patch',
  planting: 'Planting',
  path: 'Path',
  keepOut: 'Keep free',
  service: 'Service',
  measure: 'Reading',
};
export const kindName = (feature: SiteFeature): string => KIND_NAMES[feature.properties.kind];

/** True for what the shown layout holds: the features common to all layouts and its own. */
export const inLayout = (feature: SiteFeature, layout: string | null): boolean =>
  feature.properties.layout === undefined || feature.properties.layout === layout;

/** A height that was read of something lies where that stands and would hide its tag. */
const isOfThing = ({ properties }: SiteFeature, ids: ReadonlySet<string>): boolean =>
  properties.kind === 'measure' && properties.quantity === 'height' && ids.has(String(properties.of));

const statusOf = (feature: SiteFeature): 'existing' | 'planned' => {
  const { properties } = feature;
  return 'status' in properties && properties.status === 'planned' ? 'planned' : 'existing';
};

const drawn = (
  id: FeatureId,
  geometry: GeoJSON.Geometry,
  properties: Record<string, unknown>,
): GeoJSON.Feature<GeoJSON.Geometry, Record<string, unknown>> => ({
  type: 'Feature',
  geometry,
  properties: { id, ...properties },
});

const collection = (features: Drawn['features']): Drawn => ({ type: 'FeatureCollection', features });

/** A name with a reading of how it stands to the chosen year. */
const nameOf = (feature: SiteFeature): string => {
  const { properties } = feature;
  if (properties.name) return properties.name;
  if ('reason' in properties && typeof properties.reason === 'string') return properties.reason;
  return '';
};

/** The plan as GeoJSON, from the document and what has grown by the chosen year. */
export function planFeatures(state: Pick<AppState, 'document' | 'grown' | 'layout'>): PlanFeatures {
  const standing = new Map<FeatureId, Thing>(state.grown.things.map((thing) => [thing.id, thing]));
  const outlines: Drawn['features'] = [];
  const stands: Drawn['features'] = [];
  const crowns: Drawn['features'] = [];
  const points: Drawn['features'] = [];
  const names: Drawn['features'] = [];
  const ids = new Set(state.document.features.map((feature) => String(feature.id)));
  for (const feature of state.document.features) {
    if (!inLayout(feature, state.layout) || isOfThing(feature, ids)) continue;
    const { id, properties } = feature;
    const { kind } = properties;
    const geometry = feature.geometry as GeoJSON.Geometry;
    const thing = standing.get(id);
    const common = { kind, status: statusOf(feature), standing: thing !== undefined, name: nameOf(feature) };
    const footprint = thing ? footprintGeometry(thing.footprint) : null;
    if (kind === 'tree') {
      const mark = plantMark(feature as FeatureOf<'tree'>, state.document.site.species, thing?.species);
      if (footprint && thing) crowns.push(drawn(id, footprint, { ...common, mark, radiusM: thing.radiusM }));
      points.push(drawn(id, geometry, { ...common, mark, tag: properties.tag ?? '' }));
      continue;
    }
    if (geometry.type !== 'LineString' && geometry.type !== 'Polygon') {
      points.push(drawn(id, geometry, common));
      continue;
    }
    if (kind === 'belt' || kind === 'block' || kind === 'wall' || kind === 'building') {
      const open = kind === 'wall' && (properties.opticalPorosity ?? 0) > 0;
      // A wall or barn without a name of its own is known by its mark.
      const label = kind === 'belt' || kind === 'block' ? (thing?.label ?? common.name) : common.name;
      if (footprint) stands.push(drawn(id, footprint, { ...common, open, label }));
      outlines.push(drawn(id, geometry, { ...common, open, label }));
      if (label) names.push(named(id, geometry, { ...common, label }));
      continue;
    }
    const taken = kind === 'field' && properties.taken === true;
    outlines.push(drawn(id, geometry, { ...common, taken }));
    if (common.name) names.push(named(id, geometry, { ...common, taken, label: common.name }));
  }
  return {
    outlines: collection(outlines),
    stands: collection(stands),
    crowns: collection(crowns),
    points: collection(points),
    names: collection(names),
  };
}

/** A name where it is written: along a field's northern side, along the middle of a line, inside any other area. */
function named(
  id: FeatureId,
  geometry: GeoJSON.LineString | GeoJSON.Polygon,
  properties: Record<string, unknown>,
): Drawn['features'][number] {
  const place =
    geometry.type === 'LineString'
      ? middleOfLine(geometry.coordinates)
      : properties.kind === 'field'
        ? northernSide(geometry.coordinates[0])
        : { at: placeInside(geometry.coordinates[0]), turnDeg: 0 };
  return drawn(id, pointAt(place.at), { ...properties, along: geometry.type, turnDeg: place.turnDeg });
}

const pointAt = (coordinates: [number, number]): GeoJSON.Point => ({ type: 'Point', coordinates });

/** The chosen feature as it stands: its own geometry and, where it has grown, what it covers. */
export function selectedFeatures(state: Pick<AppState, 'document' | 'grown' | 'selection'>): Drawn {
  const feature = state.document.features.find(({ id }) => id === state.selection);
  if (!feature) return collection([]);
  const thing = state.grown.things.find(({ id }) => id === feature.id);
  const footprint = thing ? footprintGeometry(thing.footprint) : null;
  const { kind } = feature.properties;
  const cover = footprint && drawn(feature.id, footprint, { kind });
  // A crown is shown by its spread; a stem without one by a ring.
  if (cover && kind === 'tree') return collection([cover]);
  const own = drawn(feature.id, feature.geometry as GeoJSON.Geometry, { kind });
  return collection(cover ? [own, cover] : [own]);
}
