import { openGeoTiff } from '../geo/formats/geotiff-open.ts';
import type { AerialPicture } from '../geo/formats/rgb-geotiff.ts';

/**
 * True for a photo: several bands, or one of 8 bits. Elevations come in one band of 16 bits or more.
 * @throws BadInputError when the file is no GeoTIFF, cut short or without a place.
 */
export async function isColourRaster(bytes: ArrayBuffer, fileName: string): Promise<boolean> {
  const { image } = await openGeoTiff(fileName, bytes);
  return image.getSamplesPerPixel() >= 3 || image.getBitsPerSample(0) <= 8;
}

/** The picture as a PNG that a browser can show. */
export async function pngOf(picture: AerialPicture): Promise<ArrayBuffer> {
  const canvas = new OffscreenCanvas(picture.widthPx, picture.heightPx);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('the browser gives no canvas to draw on');
  const pixels = new Uint8ClampedArray(picture.rgba);
  context.putImageData(new ImageData(pixels, picture.widthPx, picture.heightPx), 0, 0);
  return (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer();
}
