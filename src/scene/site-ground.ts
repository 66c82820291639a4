import { type Frame, frameAt, type LonLat } from '../geo/frame.ts';
import { groundFromPlane } from '../geo/ground-from-plane.ts';
import { groundFromSpots } from '../geo/ground-from-spots.ts';
import { type LocalBox, localBoxOf, widenedBox } from '../geo/local-box.ts';
import type { Grid } from '../numeric/grid.ts';
import type { SiteDocument, SiteFeature } from '../site/document.ts';
import { placesOf } from '../site/places.ts';

/** Ground made from a plane or spot levels reaches this far beyond all that is drawn, m. */
const MARGIN_M = 300;
/** The frame's origin steps by this much, so that it stays where it is while fields are being drawn. */
const ORIGIN_STEP_PER_DEG = 100;

function centreOf(features: readonly SiteFeature[]): LonLat | null {
  let west = 180;
  let east = -180;
  let south = 90;
  let north = -90;
  for (const feature of features)
    for (const [lon, lat] of placesOf(feature.geometry.coordinates)) {
      west = Math.min(west, lon);
      east = Math.max(east, lon);
      south = Math.min(south, lat);
      north = Math.max(north, lat);
    }
  return west <= east ? [(west + east) / 2, (south + north) / 2] : null;
}

/** Middle of the fields; without fields of everything drawn; on an empty site the place it was started at. */
export function siteCentre(document: SiteDocument): LonLat {
  const fields = document.features.filter((feature) => feature.properties.kind === 'field');
  return centreOf(fields) ?? centreOf(document.features) ?? document.site.placeLonLat ?? [0, 0];
}

/** The WGS 84 UTM zone of the site's centre, its origin on a step of a hundredth of a degree. */
export function siteFrame(document: SiteDocument): Frame {
  const [lon, lat] = siteCentre(document);
  const onStep = (deg: number) => (Math.floor(deg * ORIGIN_STEP_PER_DEG) + 0.5) / ORIGIN_STEP_PER_DEG;
  return frameAt([onStep(lon), onStep(lat)]);
}

/** Local box around everything drawn, or around the place of an empty site. */
function siteBox(document: SiteDocument, frame: Frame): LocalBox {
  const places = document.features.flatMap((feature) => [...placesOf(feature.geometry.coordinates)]);
  const box = localBoxOf(frame, places.length > 0 ? places : [siteCentre(document)]);
  // localBoxOf is null only for no places at all.
  return widenedBox(box!, MARGIN_M);
}

/** Terrain is read this far around everything drawn, so that hills beside the site still shade it, m. */
const TERRAIN_MARGIN_M = 1000;
/** The box of the terrain steps by this much, so that drawing a little further does not read the file again. */
const TERRAIN_STEP_M = 500;

/** The part of a terrain file that a site needs; the same on the screen and on the command line. */
export function terrainBox(document: SiteDocument, frame: Frame): LocalBox {
  const box = widenedBox(siteBox(document, frame), TERRAIN_MARGIN_M - MARGIN_M);
  return {
    west: Math.floor(box.west / TERRAIN_STEP_M) * TERRAIN_STEP_M,
    south: Math.floor(box.south / TERRAIN_STEP_M) * TERRAIN_STEP_M,
    east: Math.ceil(box.east / TERRAIN_STEP_M) * TERRAIN_STEP_M,
    north: Math.ceil(box.north / TERRAIN_STEP_M) * TERRAIN_STEP_M,
  };
}

export interface SiteGround {
  readonly ground: Grid;
  /** One line for the panel. */
  readonly description: string;
}

/**
 * The ground: the terrain raster where there is one, else spot levels, else the plane, else flat.
 * @param terrain the site's terrain file laid on the frame, null where there is none at hand.
 */
export function siteGround(document: SiteDocument, frame: Frame, terrain: Grid | null): SiteGround {
  const { terrainFile, terrainPlane, spotLevels } = document.site;
  if (terrain) {
    const description = `Terrain from ${terrainFile ?? 'a file'}, ${Math.round(terrain.cellM * 10) / 10} m cells`;
    return { ground: terrain, description };
  }
  const box = siteBox(document, frame);
  if (spotLevels && spotLevels.length >= 3)
    return {
      ground: groundFromSpots(spotLevels, frame, box),
      description: `Ground through ${spotLevels.length} spot levels`,
    };
  if (terrainPlane && terrainPlane.fallDeg > 0) {
    const oneIn = 1 / Math.tan((terrainPlane.fallDeg * Math.PI) / 180);
    return {
      ground: groundFromPlane(terrainPlane, frame, box),
      description: `Falls 1 in ${oneIn < 10 ? oneIn.toFixed(1) : Math.round(oneIn)} toward ${Math.round(terrainPlane.towardDeg)}°`,
    };
  }
  return {
    ground: groundFromPlane({ fallDeg: 0, towardDeg: 0 }, frame, box),
    description: 'Level ground (nothing is known of it)',
  };
}
