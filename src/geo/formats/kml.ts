import { kml } from '@tmcw/togeojson';
import { type ImportedShape, shapesOf, someShapes } from './imported-shape.ts';
import { parseXml } from './xml.ts';

/** Placemarks of a KML document (OGC KML 2.3): points, paths, polygons and tracks. */
export function readKml(fileName: string, text: string): ImportedShape[] {
  const collection = kml(parseXml(fileName, text.replace(/^\uFEFF/, ''), 'kml'));
  return someShapes(
    fileName,
    collection.features
      // A picture laid on the ground comes out as its outline, which nobody drew.
      .filter((feature) => feature.properties?.['@geometry-type'] !== 'groundoverlay')
      .flatMap((feature, i) => {
        const name = (feature.properties?.name as string | undefined)?.trim() || null;
        return shapesOf(feature.geometry, name, `${fileName}, ${name ? `"${name}"` : `feature ${i + 1}`}`);
      }),
  );
}
