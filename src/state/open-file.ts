import { readShapes } from '../geo/formats/read-shapes.ts';
import { readAerialPicture } from '../geo/formats/rgb-geotiff.ts';
import type { LonLat } from '../geo/frame.ts';
import { distanceM } from '../geo/geodesic.ts';
import { setSite } from '../site/actions/set-site.ts';
import { importShapes, likelyKind } from '../site/import-geometry.ts';
import { parseSite } from '../site/parse-site.ts';
import { PlainGeoJsonError } from '../site/plain-geojson.ts';
import { REGISTRY } from '../site/records/registry.ts';
import { hasRadiation } from '../sun/weather/hourly-radiation.ts';
import { readWeatherFile } from '../sun/weather/read-weather-file.ts';
import type { WeatherTable } from '../sun/weather/weather-table.ts';
import { BadInputError } from '../units/bad-input.ts';
import { isColourRaster, pngOf } from './colour-raster.ts';
import type { App } from './model.ts';

/** Larger than this no file of a site is; it would only fill the memory. */
const MOST_BYTES = 150 * 2 ** 20;

type KeepBytes = (name: string, bytes: ArrayBuffer, type: string) => Promise<void>;

/**
 * Opens whatever was chosen or dropped: a site file takes the place of the open site; a boundary or track becomes
 * fields, belts or trees; a raster becomes the ground; weather becomes the wind and sky; a picture waits to be laid on.
 * @throws BadInputError, one sentence, when the file cannot be used.
 */
export async function openFile(file: File, app: App, keepBytes: KeepBytes): Promise<void> {
  checkSize(file);
  const ending = file.name.toLowerCase().match(/\.([a-z0-9]+)$/)?.[1] ?? '';
  switch (ending) {
    case 'geojson':
    case 'json':
      return openGeoJson(await file.arrayBuffer(), file.name, app);
    case 'kml':
    case 'gpx':
      return takeShapes(await file.arrayBuffer(), file.name, app);
    case 'tif':
    case 'tiff':
      return openRaster(file, app, keepBytes);
    case 'epw':
    case 'csv':
    case 'tmy3':
    case 'txt': {
      const bytes = await file.arrayBuffer();
      // Read before it is taken: what is no weather must not become the site's.
      const weather = readWeatherFile(new Uint8Array(bytes), file.name);
      await keepBytes(file.name, bytes, 'text/plain');
      app.edit('Use a weather file', (site) => setSite(site, { weatherFile: file.name }));
      return app.say({ tone: 'plain', text: weatherWords(file.name, weather, app) });
    }
    case 'png':
    case 'jpg':
    case 'jpeg':
    case 'webp':
      await keepBytes(file.name, await file.arrayBuffer(), file.type);
      return app.show({ dialog: 'photo', pictureToLay: file.name });
    default:
      throw new BadInputError(
        `${file.name}: this kind of file is not known here; expected a site file, GeoJSON, KML, GPX, GeoTIFF, EPW, TMY3, a CSV of winds or a picture.`,
      );
  }
}

/** Weather of a station farther away than this may be another climate; a picture, of another place. Our guesses. */
const FAR_STATION_KM = 50;
const FAR_PICTURE_KM = 2;

/** A sentence for what lies far from the site; empty where it is near. */
function farWords(from: LonLat, app: App, farKm: number, lead: string): string {
  const awayKm = distanceM(from, app.centre) / 1000;
  return awayKm > farKm
    ? ` ${lead} ${Math.round(awayKm)} km from the site: check that it is the right one.`
    : '';
}

function weatherWords(name: string, weather: WeatherTable, app: App): string {
  const { latDeg, lonDeg, hourCount } = weather;
  const sky = hasRadiation(weather);
  const gives = app.document.site.wind?.sectors
    ? `${sky ? 'gives the sky' : 'has only winds'}. The wind stays as the site has it: take it from the file in Shelter.`
    : `gives ${sky ? 'the sky and the wind' : 'the wind'}.`;
  const far =
    latDeg === null || lonDeg === null
      ? ''
      : farWords([lonDeg, latDeg], app, FAR_STATION_KM, 'It was measured');
  return `${name} (${hourCount} hours) ${gives}${far}`;
}

/** A raster of one band of elevations is the ground; one of colours is a photo that knows its place. */
async function openRaster(file: File, app: App, keepBytes: KeepBytes): Promise<void> {
  const bytes = await file.arrayBuffer();
  if (!(await isColourRaster(bytes, file.name))) {
    await keepBytes(file.name, bytes, 'image/tiff');
    app.edit('Use a terrain file', (site) => setSite(site, { terrainFile: file.name }));
    return app.say({ tone: 'plain', text: `${file.name} is the ground of the site.` });
  }
  const picture = await readAerialPicture(file.name, bytes);
  const name = file.name.replace(/\.tiff?$/i, '.png');
  await keepBytes(name, await pngOf(picture), 'image/png');
  const cornersLonLat = picture.cornersLonLat.map(([lon, lat]): [number, number] => [lon, lat]);
  app.edit(`Lay ${file.name} on the ground`, (site) =>
    setSite(site, {
      pictures: [
        ...(site.site.pictures ?? []).filter((each) => each.file !== name),
        { file: name, cornersLonLat },
      ],
    }),
  );
  app.say({
    tone: 'plain',
    text: `${file.name} is laid on the ground: ${picture.description}.${farWords(picture.cornersLonLat[0], app, FAR_PICTURE_KM, 'It lies')}`,
  });
}

/**
 * A raster of tops gives the woods around the site.
 * @throws BadInputError when it is no GeoTIFF of elevations.
 */
export async function openSurface(file: File, app: App, keepBytes: KeepBytes): Promise<void> {
  checkSize(file);
  const bytes = await file.arrayBuffer();
  if (await isColourRaster(bytes, file.name))
    throw new BadInputError(
      `${file.name}: this is a picture; expected a GeoTIFF with one band of elevations, of the tops of what stands there.`,
    );
  await keepBytes(file.name, bytes, 'image/tiff');
  app.edit('Use a surface file', (site) => setSite(site, { surfaceFile: file.name }));
  app.say({
    tone: 'plain',
    text: app.document.site.terrainFile
      ? `${file.name} gives the woods around: they shade the site where nothing is drawn.`
      : `${file.name} waits for a terrain raster, above which its woods stand: open one too.`,
  });
}

function checkSize(file: File): void {
  if (file.size === 0) throw new BadInputError(`${file.name}: the file is empty.`);
  if (file.size > MOST_BYTES)
    throw new BadInputError(
      `${file.name}: the file has ${Math.round(file.size / 2 ** 20)} MB; expected at most ${MOST_BYTES / 2 ** 20} MB: cut it to the surroundings of the site.`,
    );
}

function openGeoJson(bytes: ArrayBuffer, fileName: string, app: App): void {
  try {
    const { document, notes } = parseSite(new TextDecoder().decode(bytes), fileName);
    app.openDocument(document, { dialog: null, layout: document.site.layouts?.[0]?.name ?? null });
    app.say({ tone: 'plain', text: [`${fileName} is open.`, ...notes].join(' ') });
  } catch (reason) {
    if (!(reason instanceof PlainGeoJsonError)) throw reason;
    takeShapes(bytes, fileName, app);
  }
}

function takeShapes(bytes: ArrayBuffer, fileName: string, app: App): void {
  const shapes = readShapes(fileName, bytes).map(({ geometry, name }) => ({
    type: geometry.type,
    coordinates: geometry.coordinates,
    name,
  }));
  const kind = likelyKind(shapes);
  const { document, ids, notes } = importShapes(app.document, shapes, kind, fileName, null);
  app.edit(`Import ${fileName}`, () => document);
  const { label, plural } = REGISTRY[kind];
  app.say({
    tone: 'plain',
    text: [`${ids.length} ${ids.length === 1 ? label : plural} from ${fileName}.`, ...notes.slice(0, 3)].join(
      ' ',
    ),
  });
}
