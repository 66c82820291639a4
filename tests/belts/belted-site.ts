import { toLonLat } from '../../src/geo/frame.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { addFeatures, type Drawn } from '../../src/site/actions/add-feature.ts';
import { featuresOfKind } from '../../src/site/chosen-features.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { newSite } from '../../src/site/new-site.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';

const empty = newSite([-64.495, 45.105], 'Belted site', 2027);
const frame = siteFrame(empty);
const place = (x: number, y: number) => [...toLonLat(frame, [x, y])] as [number, number];
const line = (...points: [number, number][]) => ({
  type: 'LineString',
  coordinates: points.map(([x, y]) => place(x, y)),
});
const box = (west: number, south: number, east: number, north: number) => ({
  type: 'Polygon',
  coordinates: [
    [place(west, south), place(east, south), place(east, north), place(west, north), place(west, south)],
  ],
});

/** A level field of 100 by 100 m, all wind from the west; an edge, belts to plant, and a belt too far off. */
export function belted(): SiteDocument {
  const drawn = [
    { properties: { kind: 'field', name: 'Long Meadow' }, geometry: box(0, 0, 100, 100) },
    { properties: { kind: 'patch', name: 'Herb ground' }, geometry: box(2, 40, 12, 60) },
    {
      properties: {
        kind: 'belt',
        name: 'West edge',
        status: 'existing',
        owner: 'the neighbour',
        heightM: 16,
        widthM: 4,
      },
      geometry: line([-10, 0], [-10, 100]),
    },
    {
      properties: { kind: 'belt', name: 'North belt', status: 'existing', heightM: 12, widthM: 3 },
      geometry: line([0, 104], [100, 104]),
    },
    {
      properties: { kind: 'belt', name: 'Far belt', status: 'existing', heightM: 2, widthM: 2 },
      geometry: line([600, 0], [600, 100]),
    },
    {
      properties: {
        kind: 'belt',
        name: 'Alder belt',
        status: 'planned',
        species: 'Alnus cordata',
        plantedYear: 2028,
        widthM: 3,
      },
      geometry: line([4, 0], [4, 100]),
    },
    {
      properties: {
        kind: 'belt',
        name: 'Oak belt',
        status: 'planned',
        species: 'Quercus robur',
        plantedYear: 2028,
        widthM: 3,
      },
      geometry: line([6, 0], [6, 100]),
    },
  ] as unknown as Drawn[];
  const { document } = addFeatures(empty, drawn);
  const wind = {
    heightM: 10,
    calmShare: 0,
    sectors: [{ fromDeg: 270, frequency: 1, meanSpeedMps: 5, weibullK: 2 }],
  };
  return { ...document, site: { ...document.site, wind } };
}

export const fieldOf = (document: SiteDocument) => featuresOfKind(document.features, 'field')[0];

export const optionsOf = (document: SiteDocument): SceneOptions => {
  const own = siteFrame(document);
  return {
    year: 20,
    layout: null,
    pace: 'usual',
    frame: own,
    ground: siteGround(document, own, null).ground,
    weather: null,
  };
};

export const READING = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
