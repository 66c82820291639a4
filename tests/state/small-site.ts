import { toLonLat } from '../../src/geo/frame.ts';
import { siteFrame } from '../../src/scene/site-ground.ts';
import { addFeatures, type Drawn } from '../../src/site/actions/add-feature.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { newSite } from '../../src/site/new-site.ts';

const empty = newSite([-64.495, 45.105], 'Small site', 2026);
const frame = siteFrame(empty);
const place = (x: number, y: number) => [...toLonLat(frame, [x, y])] as [number, number];

/** A level field of 40 by 30 m with a patch in its south-west quarter and one planned walnut, at an invented place. */
export function smallSite(): SiteDocument {
  const box = (west: number, south: number, east: number, north: number) => [
    [place(west, south), place(east, south), place(east, north), place(west, north), place(west, south)],
  ];
  const drawn = [
    {
      properties: { kind: 'field', name: 'Long Meadow' },
      geometry: { type: 'Polygon', coordinates: box(0, 0, 40, 30) },
    },
    {
      properties: { kind: 'patch', name: 'Herb ground', layer: 'ground' },
      geometry: { type: 'Polygon', coordinates: box(2, 2, 18, 14) },
    },
    {
      properties: { kind: 'tree', status: 'planned', species: 'Juglans regia', tag: 'N1', plantedYear: 2027 },
      geometry: { type: 'Point', coordinates: place(20, 15) },
    },
  ] as unknown as Drawn[];
  return addFeatures(empty, drawn).document;
}

/** The same with a belt of 6 m that stands along its western edge. */
export function smallSiteWithBelt(): SiteDocument {
  const belt = {
    properties: { kind: 'belt', status: 'existing', heightM: 6, widthM: 3 },
    geometry: { type: 'LineString', coordinates: [place(1, 0), place(1, 30)] },
  } as unknown as Drawn;
  return addFeatures(smallSite(), [belt]).document;
}
