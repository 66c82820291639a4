import type { MultiPolygon, Polygon, Position } from 'geojson';
import { type Frame, frameAt, type LonLat, toLocal, toLonLat } from '../geo/frame.ts';
import { areaLess } from '../geo/polygon.ts';
import { chosenFeatures, featuresOfKind } from './chosen-features.ts';
import type { FeatureId, SiteDocument, SiteFeature } from './document.ts';
import { isInside, type XY } from './plane-geometry.ts';
import { beltDefaults } from './records/belt.ts';
import type { FieldFeature } from './records/field.ts';
import { patchDefaults } from './records/patch.ts';
import { siteDefaults } from './records/site.ts';
import { keepOutDefaults, pathDefaults } from './records/way.ts';
import { stripArea } from './strip-area.ts';

/** An area whose light is asked about. */
export interface PatchArea {
  readonly id: FeatureId;
  readonly name: string;
  /** Polygons of rings, outer first, closed; longitude and latitude. */
  readonly polygons: readonly (readonly (readonly LonLat[])[])[];
  /** Null: nothing is said of it, the asker's own height holds. */
  readonly readingHeightM: number | null;
  readonly lightShareToKeep: number;
  /** True for ground that counts as a patch because none is drawn. */
  readonly implicit: boolean;
}

/**
 * The patches of a layout on the given fields (anywhere, where no fields are given). Where none is drawn there, each
 * field less its belts, blocks, buildings, paths and ground kept free is one patch.
 */
export function patchAreas(
  document: SiteDocument,
  layout: string | null,
  fields: readonly FieldFeature[],
): PatchArea[] {
  const features = chosenFeatures(document, layout);
  const rings = fields.map((field) => field.geometry.coordinates as unknown as XY[][]);
  // Degrees serve as a plane here: only inside or outside is asked.
  const isOnFields = (place: Position) =>
    rings.length === 0 || rings.some((field) => isInside([place[0], place[1]], field));
  const drawn = featuresOfKind(features, 'patch').filter((patch) =>
    patch.geometry.coordinates[0].some(isOnFields),
  );
  const siteShare = document.site.lightToKeep?.share ?? siteDefaults.lightToKeep.share;
  if (drawn.length > 0)
    return drawn.map(({ id, properties: p, geometry }) => ({
      id,
      name: p.name ?? `Patch ${id}`,
      polygons: [asLonLat(geometry.coordinates)],
      readingHeightM:
        p.readingHeightM ?? (p.layer === undefined ? null : patchDefaults.readingHeightMByLayer[p.layer]),
      lightShareToKeep: p.lightShareToKeep ?? siteShare,
      implicit: false,
    }));
  return fields.flatMap((field) => {
    const polygons = openGround(field, features);
    if (polygons.length === 0) return [];
    return {
      id: `open-ground-${field.id}`,
      name: field.properties.name ? `Open ground of ${field.properties.name}` : 'Open ground',
      polygons,
      readingHeightM: null,
      lightShareToKeep: siteShare,
      implicit: true,
    };
  });
}

/** A field less what takes its ground; worked out in the plane of the field's own frame. */
function openGround(field: FieldFeature, features: readonly SiteFeature[]): LonLat[][][] {
  const [lon, lat] = field.geometry.coordinates[0][0];
  const frame = frameAt([lon, lat]);
  const area: Polygon = { type: 'Polygon', coordinates: inMetres(frame, field.geometry.coordinates) };
  const taken = features.flatMap((feature) => takenGround(frame, feature) ?? []);
  const open = areaLess(area, taken);
  if (!open) return [];
  const polygons = open.type === 'Polygon' ? [open.coordinates] : open.coordinates;
  return polygons.map((rings) => rings.map((ring) => ring.map(([x, y]) => toLonLat(frame, [x, y]))));
}

function takenGround(frame: Frame, { properties: p, geometry }: SiteFeature): Polygon | MultiPolygon | null {
  const halfWidthM =
    p.kind === 'belt'
      ? (p.widthM ?? beltDefaults.widthM) / 2
      : p.kind === 'path'
        ? (p.offsetM ?? pathDefaults.offsetM)
        : p.kind === 'keepOut'
          ? (p.offsetM ?? keepOutDefaults.offsetM)
          : p.kind === 'block' || p.kind === 'building'
            ? 0
            : null;
  if (halfWidthM === null || geometry.type === 'Point') return null;
  if (geometry.type === 'Polygon')
    return { type: 'Polygon', coordinates: inMetres(frame, geometry.coordinates) };
  return stripArea(inMetres(frame, [geometry.coordinates])[0] as unknown as XY[], halfWidthM);
}

const inMetres = (frame: Frame, rings: readonly Position[][]): Position[][] =>
  rings.map((ring) => ring.map(([lon, lat]): Position => [...toLocal(frame, [lon, lat])]));

const asLonLat = (rings: readonly Position[][]): LonLat[][] =>
  rings.map((ring) => ring.map(([lon, lat]): LonLat => [lon, lat]));
