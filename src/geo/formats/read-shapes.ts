import { BadInputError } from '../../units/bad-input.ts';
import { checkFileSize } from './file-size.ts';
import { readGeoJson } from './geojson.ts';
import { readGpx } from './gpx.ts';
import type { ImportedShape } from './imported-shape.ts';
import { readKml } from './kml.ts';
import { decodeText } from './text.ts';

/**
 * Boundaries, tracks and points of a KML, GPX or GeoJSON file. What the file is, is told by its first characters and
 * not by its name.
 * @throws BadInputError: one sentence that names the file.
 */
export function readShapes(fileName: string, bytes: ArrayBuffer): ImportedShape[] {
  checkFileSize(fileName, bytes.byteLength);
  const [first, second] = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  if (first === 0x50 && second === 0x4b) {
    throw new BadInputError(
      `${fileName}: this is a packed file (such as KMZ); unpack it and open the .kml file that is inside.`,
    );
  }
  const text = decodeText(bytes).replace(/^\uFEFF/, '');
  const start = text.slice(0, 4000);
  if (/^\s*[{[]/.test(start)) return readGeoJson(fileName, text);
  if (/<(\w+:)?gpx[\s>]/i.test(start)) return readGpx(fileName, text);
  if (/<(\w+:)?kml[\s>]/i.test(start)) return readKml(fileName, text);
  throw new BadInputError(
    `${fileName}: this is none of KML, GPX and GeoJSON, which are what can be imported.`,
  );
}
