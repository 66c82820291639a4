import { writeArrayBuffer } from 'geotiff';
import { describe, expect, it } from 'vitest';
import { readAerialPicture } from '../../src/geo/formats/rgb-geotiff.ts';
import { frameAt, toLocal } from '../../src/geo/frame.ts';
import { fixtureBytes, textBytes } from './files.ts';
import { GROUND, surfaceM } from './fixtures/surface.ts';

/** A colour GeoTIFF in UTM 20N with its north-west corner at 382000, 4995000. */
function colours(
  width: number,
  height: number,
  colour: (c: number, r: number) => number[],
  pixelM = 1,
): ArrayBuffer {
  const values = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) values.set(colour(i % width, Math.floor(i / width)), i * 3);
  return writeArrayBuffer(values, {
    width,
    height,
    BitsPerSample: [8, 8, 8],
    SamplesPerPixel: 3,
    PhotometricInterpretation: 2,
    ModelPixelScale: [pixelM, pixelM, 0],
    ModelTiepoint: [0, 0, 0, 382000, 4995000, 0],
    GTModelTypeGeoKey: 1,
    GTRasterTypeGeoKey: 1,
    ProjectedCSTypeGeoKey: 32620,
  });
}

describe('an aerial photo', () => {
  it('keeps its colours and the places of its outer corners', async () => {
    const bytes = colours(30, 20, (c, r) => [c * 8, r * 12, 200], 2);
    const picture = await readAerialPicture('air.tif', bytes);
    expect([picture.widthPx, picture.heightPx]).toEqual([30, 20]);
    expect([...picture.rgba.subarray(4 * (7 * 30 + 11), 4 * (7 * 30 + 12))]).toEqual([88, 84, 200, 255]);
    const frame = frameAt([-64.5, 45.1]);
    const grid = picture.cornersLonLat.map((corner) => {
      const [x, y] = toLocal(frame, corner);
      return [
        Math.round((x + frame.originEastingM) * 1000) / 1000,
        Math.round((y + frame.originNorthingM) * 1000) / 1000,
      ];
    });
    expect(grid).toEqual([
      [382000, 4995000],
      [382060, 4995000],
      [382060, 4994960],
      [382000, 4994960],
    ]);
  });

  it('is thinned out by means to at most 4096 pixels a side', async () => {
    const bytes = colours(9000, 6, (c) => (c % 2 === 0 ? [0, 100, 0] : [200, 100, 50]), 0.1);
    const { widthPx, heightPx, rgba } = await readAerialPicture('strip.tif', bytes);
    expect([widthPx, heightPx]).toEqual([3000, 2]);
    // Blocks of three columns hold one or two of the odd ones: a third or two thirds of the way.
    expect([...rgba.subarray(0, 4)]).toEqual([67, 100, 17, 255]);
    expect([...rgba.subarray(4, 8)]).toEqual([133, 100, 33, 255]);
  });

  it('comes out of a JPEG too', async () => {
    const { widthPx, rgba } = await readAerialPicture('photo.tif', fixtureBytes('photo-jpeg.tif'));
    expect(widthPx).toBe(40);
    for (const [c, r] of [
      [3, 30],
      [20, 20],
      [36, 36],
    ]) {
      const elevationM = surfaceM(GROUND.westM + (c + 0.5) * 10, GROUND.northM - (r + 0.5) * 10);
      const grey = ((elevationM - 120) / 60) * 255;
      for (let k = 0; k < 3; k++) expect(Math.abs(rgba[4 * (r * 40 + c) + k] - grey)).toBeLessThan(8);
    }
  });

  it('that is none gives a sentence naming the file', async () => {
    await expect(readAerialPicture('a.jpg', textBytes('not a picture'))).rejects.toThrow(
      /^a\.jpg: this is not a TIFF/,
    );
  });
});
