import proj4 from 'proj4';
import { describe, expect, it } from 'vitest';
import { proj4OfEpsg } from '../../../src/geo/formats/epsg.ts';
import { systemOfGeoKeys } from '../../../src/geo/formats/geokeys.ts';

// Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395, 1987: the numerical examples at the
// end, on the Clarke 1866 ellipsoid. From memory; printed to a decimetre.
const clarke1866 = {
  GTModelTypeGeoKey: 1,
  ProjectedCSTypeGeoKey: 32767,
  GeographicTypeGeoKey: 32767,
  GeogEllipsoidGeoKey: 7008,
};
const forward = (keys: Record<string, number>, lonDeg: number, latDeg: number): number[] =>
  proj4('+proj=longlat +ellps=clrk66 +towgs84=0,0,0', systemOfGeoKeys(keys, 'x.tif').proj4).forward([
    lonDeg,
    latDeg,
  ]);

describe('projections spelled out key by key', () => {
  it('Albers equal-area conic, two standard parallels', () => {
    const keys = {
      ...clarke1866,
      ProjCoordTransGeoKey: 11,
      ProjStdParallel1GeoKey: 29.5,
      ProjStdParallel2GeoKey: 45.5,
      ProjNatOriginLatGeoKey: 23,
      ProjNatOriginLongGeoKey: -96,
    };
    const [x, y] = forward(keys, -75, 35);
    expect(Math.abs(x - 1885472.7)).toBeLessThan(0.06);
    expect(Math.abs(y - 1535925.0)).toBeLessThan(0.06);
  });

  const lambert = {
    ...clarke1866,
    ProjCoordTransGeoKey: 8,
    ProjStdParallel1GeoKey: 33,
    ProjStdParallel2GeoKey: 45,
    ProjFalseOriginLatGeoKey: 23,
    ProjFalseOriginLongGeoKey: -96,
  };
  it('Lambert conformal conic, two standard parallels', () => {
    const [x, y] = forward(lambert, -75, 35);
    expect(Math.abs(x - 1894410.9)).toBeLessThan(0.06);
    expect(Math.abs(y - 1564649.5)).toBeLessThan(0.06);
  });

  it('the same in US survey feet, false origin in feet too', () => {
    const feet = { ...lambert, ProjLinearUnitsGeoKey: 9003, ProjFalseOriginEastingGeoKey: 1000 };
    const [x, y] = forward(feet, -75, 35);
    expect(Math.abs(x - (1894410.9 * 3937) / 1200 - 1000)).toBeLessThan(0.2);
    expect(Math.abs(y - (1564649.5 * 3937) / 1200)).toBeLessThan(0.2);
  });

  it('transverse Mercator with a scale at its meridian', () => {
    const keys = {
      ...clarke1866,
      ProjCoordTransGeoKey: 1,
      ProjNatOriginLatGeoKey: 0,
      ProjNatOriginLongGeoKey: -75,
      ProjScaleAtNatOriginGeoKey: 0.9996,
    };
    const [x, y] = forward(keys, -73.5, 40.5);
    expect(Math.abs(x - 127106.5)).toBeLessThan(0.06);
    expect(Math.abs(y - 4484124.4)).toBeLessThan(0.06);
  });
});

describe('systems by their EPSG code', () => {
  const place = (code: number, lonDeg: number, latDeg: number): number[] =>
    proj4('+proj=longlat +datum=WGS84', proj4OfEpsg(code) ?? 'unknown').forward([lonDeg, latDeg]);

  // Values by PROJ 9.1 (gdaltransform of GDAL 3.6.2, EPSG:4326 to the code). Where the datum is WGS 84's twin the two
  // agree to a centimetre; elsewhere PROJ takes its best regional parameters, we one published set or none.
  it.each([
    [5070, -105, 40, -760465.7454, 1923013.9798, 0.01],
    [2154, 3, 46.5, 700000, 6600000, 0.01],
    [25832, 9, 50, 500000, 5538630.7027, 0.01],
    [2193, 173, -41, 1600000, 5461242.9382, 0.01],
    [27700, -2.5, 53, 366541.1755, 344859.1292, 0.5],
    [28992, 5.3876, 52.1552, 155027.1337, 463003.0824, 0.5],
    [31287, 13.3333, 47.5, 400053.1677, 400057.5555, 1],
    [2056, 7.4386, 46.9511, 2599997.5325, 1200001.9164, 0.5],
    [5514, 15, 50, -703011.8819, -1058147.274, 1],
    [2961, -64.5, 45.1, 381982.759, 4995152.5937, 1.5],
    [2227, -122, 37.5, 6126548.2445, 2008012.8128, 5], // US survey feet
  ])('EPSG:%i', (code, lonDeg, latDeg, x, y, toleranceM) => {
    const found = place(code, lonDeg, latDeg);
    expect(Math.hypot(found[0] - x, found[1] - y)).toBeLessThan(toleranceM);
  });

  it('knows the UTM families by their zones', () => {
    expect(proj4OfEpsg(32620)).toContain('+zone=20 ');
    expect(proj4OfEpsg(6328)).toContain('+zone=59 ');
    expect(proj4OfEpsg(6330)).toContain('+zone=1 ');
    expect(proj4OfEpsg(31985)).toContain('+zone=25 +south');
    expect(proj4OfEpsg(7855)).toContain('+zone=55 +south');
    expect(proj4OfEpsg(99999)).toBeNull();
  });
});
