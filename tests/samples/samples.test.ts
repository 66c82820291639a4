import { readFileSync } from 'node:fs';
import { fromArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { makeSamples } from '../../data-samples/samples.ts';
import { frameAt, type LonLat, toLocal } from '../../src/geo/frame.ts';
import { polygonAreaM2 } from '../../src/geo/geodesic.ts';
import { whatDiffers } from '../../src/layouts/what-differs.ts';
import { findRootstock, findSpecies } from '../../src/plants/find-species.ts';
import { checkSite } from '../../src/site/check-site.ts';
import type { FeatureOf, Kind, SiteDocument } from '../../src/site/document.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { placesOf } from '../../src/site/places.ts';
import { isInside } from '../../src/site/plane-geometry.ts';
import { readWeatherFile } from '../../src/sun/weather/read-weather-file.ts';
import { deepestFillM } from './deepest-fill.ts';

const committed = (path: string) => new Uint8Array(readFileSync(`data-samples/${path}`));
const site = (path: string) => parseSite(new TextDecoder().decode(committed(path)), path);
/** Of what is common, or of one layout alone. */
const ofKind = <K extends Kind>(document: SiteDocument, kind: K, layout?: string) =>
  document.features.filter(
    (feature): feature is FeatureOf<K> =>
      feature.properties.kind === kind && feature.properties.layout === layout,
  );
const ringOf = (feature: { geometry: { coordinates: unknown } }) =>
  (feature.geometry.coordinates as LonLat[][])[0];

const SORREL = 'sorrel-bank/sorrel-bank.site.geojson';
const KESTREL = 'kestrel-flat/kestrel-flat.site.geojson';

describe('the committed samples', () => {
  const made = makeSamples();

  it('are what the seeded script makes, byte for byte', () => {
    expect([...made.keys()].sort()).toEqual([
      KESTREL,
      'sorrel-bank/sorrel-bank-ground.tif',
      'sorrel-bank/sorrel-bank-weather.epw',
      SORREL,
    ]);
    for (const [path, bytes] of made) {
      expect(Buffer.compare(Buffer.from(bytes), Buffer.from(committed(path))), path).toBe(0);
    }
  });

  it('are small', () => {
    expect(made.get('sorrel-bank/sorrel-bank-ground.tif')!.length).toBeLessThan(600_000);
    expect(made.get('sorrel-bank/sorrel-bank-weather.epw')!.length).toBeLessThan(2 ** 20);
  });

  it.each([SORREL, KESTREL])('%s opens without a remark and with every plant known', (path) => {
    const { document, notes } = site(path);
    expect(notes).toEqual([]);
    for (const { id, properties } of document.features) {
      if ('species' in properties && typeof properties.species === 'string') {
        const species = findSpecies(properties.species, document.site.species);
        expect(species, String(id)).not.toBeNull();
        if (properties.kind === 'tree' && properties.rootstock) {
          expect(findRootstock(species, properties.rootstock), String(id)).not.toBeNull();
        }
      }
    }
    const knowsSpecies = (name: string) => ({ known: findSpecies(name, undefined) !== null });
    expect(checkSite(document, { knowsSpecies }).filter(({ level }) => level === 'problem')).toEqual([]);
  });

  it('have winds that add up in each season', () => {
    for (const path of [SORREL, KESTREL]) {
      const { sectors = [], calmShare = 0 } = site(path).document.site.wind!;
      for (const season of ['growing', 'rest']) {
        const share = sectors
          .filter((sector) => sector.season === undefined || sector.season === season)
          .reduce((sum, { frequency }) => sum + frequency, calmShare);
        expect(Math.abs(share - 1)).toBeLessThan(0.001);
      }
    }
  });
});

describe('Sorrel Bank', () => {
  const { document } = site(SORREL);

  it('offers three fields of about a hectare, Pound Field taken', () => {
    const fields = ofKind(document, 'field');
    expect(fields.map(({ properties }) => properties.name)).toEqual([
      'Upper Lea',
      'Pound Field',
      'Withy Bottom',
    ]);
    expect(fields.filter(({ properties }) => properties.taken).length).toBe(1);
    for (const field of fields) {
      const areaM2 = polygonAreaM2([ringOf(field)]);
      expect(areaM2).toBeGreaterThan(8000);
      expect(areaM2).toBeLessThan(15_000);
    }
  });

  it('has some sixty trees with tags of their own, and six patches', () => {
    const trees = ofKind(document, 'tree');
    expect(trees.length).toBeGreaterThanOrEqual(55);
    expect(trees.length).toBeLessThanOrEqual(65);
    expect(new Set(trees.map(({ properties }) => properties.tag)).size).toBe(trees.length);
    expect(ofKind(document, 'patch').length).toBe(6);
  });

  it('has two layouts of Upper Lea that differ in the years of planting alone, and say that they are invented', () => {
    const [first, atOnce] = ['Shelter first', 'Everything at once'];
    expect(document.site.layouts?.map(({ name }) => name)).toEqual([first, atOnce]);
    for (const { note } of document.site.layouts as { note?: string }[]) expect(note).toMatch(/^Invented/);
    const upperLea = ofKind(document, 'field').find(({ properties }) => properties.name === 'Upper Lea')!;
    for (const layout of [first, atOnce]) {
      const own = document.features.filter(({ properties }) => properties.layout === layout);
      for (const { id, geometry } of own)
        for (const [lon, lat] of placesOf(geometry.coordinates))
          expect(isInside([lon, lat], [ringOf(upperLea)]), String(id)).toBe(true);
      expect(new Set(ofKind(document, 'belt', layout).map((belt) => belt.properties.plantedYear))).toEqual(
        new Set([2027]),
      );
    }
    const differs = whatDiffers(document, first, atOnce);
    expect([differs.onlyA, differs.onlyB]).toEqual([[], []]);
    expect(differs.changed.length).toBe(20);
    for (const { a, b, moved, properties } of differs.changed) {
      expect([a.properties.kind, moved, properties]).toEqual(['tree', false, ['plantedYear']]);
      expect((a as FeatureOf<'tree'>).properties.plantedYear).toBe(2033);
      expect((b as FeatureOf<'tree'>).properties.plantedYear).toBe(2027);
    }
    const tags = ofKind(document, 'tree').map(({ properties }) => properties.tag);
    for (const { properties } of ofKind(document, 'tree', first)) expect(tags).not.toContain(properties.tag);
  });

  it('has ground that falls from Upper Lea to a closed hollow in Withy Bottom', async () => {
    const bytes = committed('sorrel-bank/sorrel-bank-ground.tif');
    const tiff = await fromArrayBuffer(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
    const image = await tiff.getImage();
    expect(image.getGeoKeys()?.ProjectedCSTypeGeoKey).toBe(32620);
    expect(image.getResolution()[0]).toBe(2);
    const [elevations] = (await image.readRasters()) as unknown as Float32Array[];
    const [west, south, east, north] = image.getBoundingBox();
    const frame = frameAt([-64.5, 45.1]);
    const at = (place: LonLat) => {
      const [x, y] = toLocal(frame, place);
      const column = Math.floor((x + frame.originEastingM - west) / 2);
      const row = Math.floor((north - y - frame.originNorthingM) / 2);
      return { elevationM: elevations[row * image.getWidth() + column], column, row };
    };
    const meanOf = (name: string) => {
      const ring = ringOf(ofKind(document, 'field').find(({ properties }) => properties.name === name)!);
      return ring.reduce((sum, place) => sum + at(place).elevationM, 0) / ring.length;
    };
    expect(meanOf('Upper Lea') - meanOf('Pound Field')).toBeGreaterThan(8);
    expect(meanOf('Pound Field') - meanOf('Withy Bottom')).toBeGreaterThan(8);

    const deepest = deepestFillM(elevations, image.getWidth(), image.getHeight());
    expect(deepest.depthM).toBeGreaterThan(1);
    const ring = ringOf(ofKind(document, 'field').find((f) => f.properties.name === 'Withy Bottom')!).map(at);
    expect(deepest.column).toBeGreaterThan(Math.min(...ring.map(({ column }) => column)));
    expect(deepest.column).toBeLessThan(Math.max(...ring.map(({ column }) => column)));
    expect(deepest.row).toBeGreaterThan(Math.min(...ring.map(({ row }) => row)));
    expect(deepest.row).toBeLessThan(Math.max(...ring.map(({ row }) => row)));

    const inside = ofKind(document, 'field')
      .flatMap(ringOf)
      .map((place) => toLocal(frame, place));
    for (const [x, y] of inside) {
      expect(x + frame.originEastingM - west).toBeGreaterThanOrEqual(150);
      expect(east - x - frame.originEastingM).toBeGreaterThanOrEqual(150);
      expect(north - y - frame.originNorthingM).toBeGreaterThanOrEqual(150);
      expect(y + frame.originNorthingM - south).toBeGreaterThanOrEqual(150);
    }
  });

  it('has a year of weather with the sunshine and the winds of the site record', () => {
    const weather = readWeatherFile(
      committed('sorrel-bank/sorrel-bank-weather.epw'),
      'sorrel-bank-weather.epw',
    );
    expect(weather.hourCount).toBe(8760);
    // Extraterrestrial radiation at 45° N, MJ m-2 d-1, between the 40 and 50 degree rows of FAO-56 Table 2.6.
    const extraterrestrial = [12, 17.4, 24.7, 33.1, 39.1, 41.8, 40.5, 35.6, 27.9, 19.6, 13.3, 10.6];
    const sunshine = document.site.sunshineShareByMonth!;
    let year = 0;
    let expected = 0;
    for (let month = 1; month <= 12; month++) {
      let joules = 0;
      let hours = 0;
      for (let i = 0; i < 8760; i++) {
        if (weather.month[i] !== month) continue;
        joules += weather.globalWm2[i] * 3600;
        hours++;
      }
      const daily = joules / 1e6 / (hours / 24);
      // Ångström-Prescott (FAO-56 eq. 35).
      const usual = extraterrestrial[month - 1] * (0.25 + 0.5 * sunshine[month - 1]);
      expect(Math.abs(daily / usual - 1), `month ${month}`).toBeLessThan(0.2);
      year += daily;
      expected += usual;
    }
    expect(Math.abs(year / expected - 1)).toBeLessThan(0.05);

    let gales = 0;
    let westerlyGales = 0;
    let calms = 0;
    for (let i = 0; i < 8760; i++) {
      if (weather.windSpeedMps[i] === 0) calms++;
      if (weather.windSpeedMps[i] < 13.9) continue;
      gales++;
      if (weather.windFromDeg[i] >= 200 && weather.windFromDeg[i] <= 325) westerlyGales++;
    }
    expect(gales).toBeGreaterThan(40);
    expect(westerlyGales / gales).toBeGreaterThan(0.8);
    expect(calms / 8760).toBeGreaterThan(0.01);
    expect(calms / 8760).toBeLessThan(0.06);
  });
});

describe('Kestrel Flat', () => {
  it('lies in the south, with one field, one belt, a dozen trees and two patches', () => {
    const { document } = site(KESTREL);
    const count = (kind: Kind) => ofKind(document, kind).length;
    expect([count('field'), count('belt'), count('tree'), count('patch')]).toEqual([1, 1, 12, 2]);
    expect(ringOf(ofKind(document, 'field')[0])[0][1]).toBeLessThan(-43);
    expect(document.site.timeZone).toBe('Pacific/Auckland');
    const northWest = document.site.wind!.sectors!.find(({ fromDeg }) => fromDeg === 315)!;
    for (const sector of document.site.wind!.sectors!) {
      expect(sector.frequency).toBeLessThanOrEqual(northWest.frequency);
    }
  });
});
