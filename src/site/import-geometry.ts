import type { LonLat } from '../geo/frame.ts';
import { distanceM } from '../geo/geodesic.ts';
import { BadInputError } from '../units/bad-input.ts';
import { addFeatures, type Drawn } from './actions/add-feature.ts';
import type { FeatureId, Kind, SiteDocument } from './document.ts';
import { placesOf } from './places.ts';
import { REGISTRY } from './records/registry.ts';
import { validateFeature } from './validate-feature.ts';

/** A shape from any file: a boundary, a track, a waypoint. Longitude and latitude, WGS 84. */
export interface ForeignShape {
  readonly type: string;
  readonly coordinates: unknown;
  readonly name?: string | null;
}

export interface Imported {
  readonly document: SiteDocument;
  readonly ids: readonly FeatureId[];
  /** What was changed or left out on the way, one sentence each. */
  readonly notes: readonly string[];
}

/** What a file most likely holds: an area is a field, a line a belt, a point a tree. */
export function likelyKind(shapes: readonly ForeignShape[]): Kind {
  const types = new Set(shapes.flatMap(singles).map((shape) => shape.type));
  return types.has('Polygon') ? 'field' : types.has('LineString') ? 'belt' : 'tree';
}

/**
 * Adds the shapes of a file as features of one kind. A closed track becomes an area where the kind wants one (an open one
 * is closed by a straight side), an area its outline where the kind wants a line; the rest is left out, with a note.
 * @throws BadInputError when nothing can be taken, with the reason of the first shape.
 */
export function importShapes(
  document: SiteDocument,
  shapes: readonly ForeignShape[],
  kind: Kind,
  fileName: string,
  layout: string | null = null,
): Imported {
  const notes: string[] = [];
  const drawn: Drawn[] = [];
  const refusals: string[] = [];
  for (const [i, shape] of shapes.flatMap(singles).entries()) {
    const name = shape.name?.trim() || undefined;
    const words = name ? JSON.stringify(name) : `shape ${i + 1}`;
    const geometry = fittedGeometry(shape, kind, (note) => notes.push(`${words}: ${note}`));
    const feature = {
      type: 'Feature',
      id: name ?? `shape ${i + 1}`,
      properties: { kind, ...(name ? { name } : {}), ...(layout ? { layout } : {}) },
      geometry,
    };
    try {
      validateFeature(feature, `${fileName}: `);
      drawn.push({ properties: feature.properties, geometry: feature.geometry } as Drawn);
    } catch (error) {
      if (!(error instanceof BadInputError)) throw error;
      refusals.push(error.message);
    }
  }
  if (drawn.length === 0)
    throw new BadInputError(
      refusals[0] ??
        `${fileName}: the file holds no shapes; expected at least one for a ${REGISTRY[kind].label}.`,
    );
  return { ...addFeatures(document, drawn), notes: [...notes, ...refusals.map((r) => `Left out: ${r}`)] };
}

/** The single shapes of one that may be manifold. */
function singles(shape: ForeignShape): ForeignShape[] {
  if (!shape.type.startsWith('Multi') || !Array.isArray(shape.coordinates)) return [shape];
  return shape.coordinates.map((coordinates: unknown, i) => ({
    type: shape.type.slice('Multi'.length),
    coordinates,
    name: shape.name && i > 0 ? `${shape.name} ${i + 1}` : shape.name,
  }));
}

function fittedGeometry(
  { type, coordinates }: ForeignShape,
  kind: Kind,
  note: (sentence: string) => void,
): { type: string; coordinates: unknown } {
  const wanted: readonly string[] = REGISTRY[kind].geometryTypes;
  if (wanted.includes(type)) return { type, coordinates };
  if (type === 'LineString' && wanted.includes('Polygon')) {
    const ring = [...(coordinates as LonLat[])];
    const places = [...placesOf(ring)];
    const gapM = places.length > 1 ? distanceM(places[places.length - 1], places[0]) : 0;
    if (gapM > 0) {
      ring.push(ring[0]);
      note(`the line was closed by a straight side of ${gapM < 10 ? gapM.toFixed(1) : Math.round(gapM)} m.`);
    }
    return { type: 'Polygon', coordinates: [ring] };
  }
  if (type === 'Polygon' && wanted.includes('LineString')) {
    note('the outline of the area was taken as a line.');
    return { type: 'LineString', coordinates: (coordinates as unknown[])[0] };
  }
  return { type, coordinates };
}
