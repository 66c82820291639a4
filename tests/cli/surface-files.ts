import { writeGeoTiff } from '../../src/geo/formats/geotiff-write.ts';
import { frameAt } from '../../src/geo/frame.ts';
import { gridOf } from '../reference/plain-horizon.ts';
import { CENTRE } from './small-site.ts';

/** Invented land around the small site: a slope in 10 m cells, and woods of a height on it in 2 m cells, 600 m each way. */
export const groundM = (xM: number, yM: number): number => 60 + 0.03 * xM - 0.04 * yM;

function geoTiff(cellM: number, value: (xM: number, yM: number) => number): Uint8Array<ArrayBuffer> {
  const grid = gridOf(600 / cellM, 600 / cellM, cellM, value);
  return new Uint8Array(writeGeoTiff([{ name: 'elevation', values: grid.values }], grid, frameAt(CENTRE)));
}

export const groundTif = (): Uint8Array<ArrayBuffer> => geoTiff(10, groundM);
/** @param heightM metres above the ground, east and north of the site's centre */
export const topsTif = (heightM: (xM: number, yM: number) => number): Uint8Array<ArrayBuffer> =>
  geoTiff(2, (xM, yM) => groundM(xM, yM) + heightM(xM, yM));
