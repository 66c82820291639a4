import { gpx } from '@tmcw/togeojson';
import { type ImportedShape, shapesOf, someShapes } from './imported-shape.ts';
import { parseXml } from './xml.ts';

/** Waypoints, routes and tracks of a GPX 1.0 or 1.1 file. A track of several segments gives one line a segment. */
export function readGpx(fileName: string, text: string): ImportedShape[] {
  const collection = gpx(parseXml(fileName, text.replace(/^\uFEFF/, ''), 'gpx'));
  return someShapes(
    fileName,
    collection.features.flatMap((feature, i) => {
      const name = (feature.properties?.name as string | undefined)?.trim() || null;
      return shapesOf(feature.geometry, name, `${fileName}, ${name ? `"${name}"` : `feature ${i + 1}`}`);
    }),
  );
}
