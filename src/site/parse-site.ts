import { BadInputError } from '../units/bad-input.ts';
import type { FeatureId, OtherFeature, SiteDocument, SiteFeature } from './document.ts';
import { freeId } from './feature-ids.ts';
import { foundWords } from './issue-sentence.ts';
import { migrated } from './migrations/migrations.ts';
import { isGeoJson, PlainGeoJsonError } from './plain-geojson.ts';
import { readJsonObject } from './read-json.ts';
import { isKind, REGISTRY } from './records/registry.ts';
import { CURRENT_FORMAT_VERSION } from './records/site.ts';
import { validateIds, validateSiteRecord } from './validate-document.ts';
import { validateFeature } from './validate-feature.ts';

export interface ParsedSite {
  readonly document: SiteDocument;
  /** What was done to the file on the way in, one sentence each. */
  readonly notes: readonly string[];
}

/**
 * Reads a site file. Members and kinds that this version does not know are kept.
 * @throws PlainGeoJsonError for GeoJSON without a site record; BadInputError, one sentence, for anything else wrong.
 */
export function parseSite(text: string, fileName: string): ParsedSite {
  const where = `${fileName}: `;
  const collection = readJsonObject(text, fileName);
  if (!isGeoJson(collection))
    throw new BadInputError(
      `${where}the file is JSON but not GeoJSON: its type ${foundWords(collection.type)}; expected "FeatureCollection" with a list of features.`,
    );
  if (collection.type !== 'FeatureCollection' || collection.site === undefined)
    throw new PlainGeoJsonError(fileName, collection);
  const { site } = collection;
  if (typeof site !== 'object' || site === null || Array.isArray(site))
    throw new BadInputError(
      `${where}site ${foundWords(site)}; expected an object with name, timeZone and baseYear.`,
    );
  refuseForeignSystem(collection.crs, where);

  const version = versionOf(site as Record<string, unknown>, where);
  const { raw, notes } = migrated(
    { ...collection, site: site as Record<string, unknown>, features: collection.features as unknown[] },
    version,
    fileName,
  );
  validateSiteRecord(raw.site, where);
  const { features, otherFeatures, notes: featureNotes } = readFeatures(raw.features, where);
  return {
    document: {
      ...raw,
      type: 'FeatureCollection',
      site: raw.site as SiteDocument['site'],
      features,
      ...(otherFeatures.length > 0 ? { otherFeatures } : {}),
    },
    notes: [...notes, ...featureNotes],
  };
}

function versionOf(site: Readonly<Record<string, unknown>>, where: string): number {
  const version = site.formatVersion ?? 0;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    throw new BadInputError(
      `${where}site.formatVersion ${foundWords(version)}; expected a whole number, ${CURRENT_FORMAT_VERSION} today.`,
    );
  if (version > CURRENT_FORMAT_VERSION)
    throw new BadInputError(
      `${where}site.formatVersion is ${version}; expected ${CURRENT_FORMAT_VERSION} or less, so open it with the newer Leeglade that wrote it.`,
    );
  return version;
}

/** Old GeoJSON could name another coordinate system; taking its numbers for degrees would misplace everything. */
function refuseForeignSystem(crs: unknown, where: string): void {
  const name = (crs as { properties?: { name?: unknown } } | null | undefined)?.properties?.name;
  if (typeof name === 'string' && !/(CRS84|EPSG:+4326)$/i.test(name))
    throw new BadInputError(
      `${where}crs is ${JSON.stringify(name)}; expected WGS 84 longitude and latitude, as GeoJSON has it.`,
    );
}

interface ReadFeatures {
  readonly features: SiteFeature[];
  readonly otherFeatures: OtherFeature[];
  readonly notes: string[];
}

function readFeatures(raws: readonly unknown[], where: string): ReadFeatures {
  const features: SiteFeature[] = [];
  const otherFeatures: OtherFeature[] = [];
  const unknownKinds = new Set<string>();
  const taken = new Set<string>();
  for (const [i, raw] of raws.entries()) {
    const r = raw as { type?: unknown; id?: unknown } | null;
    if (typeof r !== 'object' || r === null || r.type !== 'Feature')
      throw new BadInputError(
        `${where}features[${i}] ${foundWords(r?.type ?? r)}; expected a GeoJSON Feature.`,
      );
    if (r.id !== undefined && r.id !== null) taken.add(String(r.id));
  }
  let withoutId = 0;
  let singled = 0;
  for (const raw of raws as Record<string, unknown>[]) {
    const properties = raw.properties as Record<string, unknown> | null | undefined;
    const kind = properties?.kind;
    if (!properties || !isKind(kind)) {
      otherFeatures.push(raw as OtherFeature);
      unknownKinds.add(kind === undefined || kind === null ? 'no kind' : `kind ${JSON.stringify(kind)}`);
      continue;
    }
    let id = raw.id as FeatureId | null | undefined;
    if (id === undefined || id === null) {
      withoutId++;
      id = freeId(kind, taken);
      taken.add(String(id));
    }
    const geometry = singlePart(raw.geometry);
    if (geometry !== raw.geometry) singled++;
    const feature = { ...raw, id, properties: withoutEmptyColumns(properties, kind), geometry };
    validateFeature(feature, where);
    features.push(feature);
  }
  validateIds([...features, ...otherFeatures], where);

  const notes: string[] = [];
  if (withoutId > 0)
    notes.push(
      withoutId === 1
        ? 'One feature had no id and was given one.'
        : `${withoutId} features had no id and were given one.`,
    );
  if (singled > 0)
    notes.push(
      `${singled} ${singled === 1 ? 'shape was' : 'shapes were'} written as several parts with one part only, and read as that part.`,
    );
  if (otherFeatures.length > 0)
    notes.push(
      `${otherFeatures.length} ${otherFeatures.length === 1 ? 'feature is' : 'features are'} kept but not used (${[...unknownKinds].join(', ')}).`,
    );
  return { features, otherFeatures, notes };
}

/** Programs that keep features in a table write null wherever a column is empty: for our own properties that means absent. */
function withoutEmptyColumns(
  properties: Record<string, unknown>,
  kind: keyof typeof REGISTRY,
): Record<string, unknown> {
  const own = new Set(REGISTRY[kind].fields.map((field) => field.key).concat('layout'));
  const empty = Object.keys(properties).filter((key) => properties[key] === null && own.has(key));
  if (empty.length === 0) return properties;
  return Object.fromEntries(Object.entries(properties).filter(([key]) => !empty.includes(key)));
}

/** Programs that keep features in a table write every polygon of a layer as a MultiPolygon, mostly of one part. */
function singlePart(geometry: unknown): unknown {
  const g = geometry as { type?: unknown; coordinates?: unknown } | null | undefined;
  const part = /^Multi(Point|LineString|Polygon)$/.exec(String(g?.type))?.[1];
  if (!part || !Array.isArray(g?.coordinates) || g.coordinates.length !== 1) return geometry;
  return { ...g, type: part, coordinates: g.coordinates[0] };
}
