import { geographicProj4, proj4OfEpsg, unknownSystem } from './epsg.ts';

/** The keys by which a GeoTIFF names its system (OGC GeoTIFF 1.1), as the reader hands them over. */
export type GeoKeys = Readonly<Record<string, unknown>>;

export interface RasterSystem {
  /** proj4 definition. */
  readonly proj4: string;
  /** For the person: "EPSG:26920", "Albers, NAD83". */
  readonly name: string;
  readonly geographic: boolean;
}

const USER_DEFINED = 32767;
const num = (keys: GeoKeys, name: string): number | undefined => {
  const value = keys[name];
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
};
const first = (keys: GeoKeys, ...names: string[]): number =>
  names.map((name) => num(keys, name)).find((value) => value !== undefined) ?? 0;

/** Metres in a unit of length by EPSG code. */
export const LENGTH_UNIT_M: Readonly<Record<number, number>> = {
  9001: 1,
  9002: 0.3048,
  9003: 1200 / 3937,
  9005: 0.3047972654,
  9036: 1000,
};

/** @throws BadInputError when there is no system or it is not known. */
export function systemOfGeoKeys(keys: GeoKeys, fileName: string): RasterSystem {
  const projected = num(keys, 'ProjectedCSTypeGeoKey');
  const geographic = num(keys, 'GeographicTypeGeoKey');
  const modelType = num(keys, 'GTModelTypeGeoKey');
  if (projected !== undefined && projected !== USER_DEFINED) {
    const proj4 = proj4OfEpsg(projected);
    if (!proj4) throw unknownSystem(fileName, `EPSG:${projected}`);
    return { proj4, name: `EPSG:${projected}`, geographic: false };
  }
  if (modelType === 1 || projected === USER_DEFINED) return userProjected(keys, fileName);
  if (modelType === 2 || geographic !== undefined) {
    const scale = angularUnitDeg(keys);
    if (Math.abs(scale - 1) > 1e-9) throw unknownSystem(fileName, 'geographic, not in degrees');
    const code =
      geographic === undefined || geographic === USER_DEFINED ? 'user-defined' : `EPSG:${geographic}`;
    return { proj4: `+proj=longlat ${datumOf(keys, fileName)}`, name: code, geographic: true };
  }
  throw unknownSystem(fileName, modelType === 3 ? 'geocentric' : 'none named');
}

/** Ellipsoid and shift to WGS 84 of the geographic system underneath. */
function datumOf(keys: GeoKeys, fileName: string): string {
  const code = num(keys, 'GeographicTypeGeoKey');
  if (code !== undefined && code !== USER_DEFINED) {
    const known = geographicProj4(code);
    if (!known) throw unknownSystem(fileName, `on the geographic system EPSG:${code}`);
    return known.replace('+proj=longlat ', '');
  }
  const datum = num(keys, 'GeogGeodeticDatumGeoKey');
  // In the EPSG register a datum 6xxx belongs to the geographic system 4xxx.
  const byDatum = datum !== undefined && datum !== USER_DEFINED ? geographicProj4(datum - 2000) : null;
  if (byDatum) return byDatum.replace('+proj=longlat ', '');
  const shift = keys.GeogTOWGS84GeoKey;
  const toWgs84 =
    Array.isArray(shift) || ArrayBuffer.isView(shift)
      ? ` +towgs84=${Array.from(shift as ArrayLike<number>).join(',')}`
      : ' +towgs84=0,0,0';
  return ellipsoidOf(keys) + toWgs84;
}

const ELLIPSOIDS: Readonly<Record<number, string>> = {
  7001: 'airy',
  7004: 'bessel',
  7008: 'clrk66',
  7019: 'GRS80',
  7022: 'intl',
  7024: 'krass',
  7030: 'WGS84',
  7043: 'WGS72',
};

function ellipsoidOf(keys: GeoKeys): string {
  const semiMajorM = num(keys, 'GeogSemiMajorAxisGeoKey');
  const inverseFlattening = num(keys, 'GeogInvFlatteningGeoKey');
  const semiMinorM = num(keys, 'GeogSemiMinorAxisGeoKey');
  if (semiMajorM && inverseFlattening) return `+a=${semiMajorM} +rf=${inverseFlattening}`;
  if (semiMajorM && semiMinorM) return `+a=${semiMajorM} +b=${semiMinorM}`;
  return `+ellps=${ELLIPSOIDS[num(keys, 'GeogEllipsoidGeoKey') ?? 7030] ?? 'WGS84'}`;
}

function angularUnitDeg(keys: GeoKeys): number {
  switch (num(keys, 'GeogAngularUnitsGeoKey')) {
    case 9101:
      return 180 / Math.PI;
    case 9105:
      return 0.9;
    case USER_DEFINED:
      return ((num(keys, 'GeogAngularUnitSizeGeoKey') ?? Math.PI / 180) * 180) / Math.PI;
    default:
      return 1;
  }
}

/** A projection spelled out key by key (code 32767), or a register's projection on another datum. */
function userProjected(keys: GeoKeys, fileName: string): RasterSystem {
  const unitCode = num(keys, 'ProjLinearUnitsGeoKey') ?? 9001;
  const unitM =
    unitCode === USER_DEFINED ? (num(keys, 'ProjLinearUnitSizeGeoKey') ?? 1) : LENGTH_UNIT_M[unitCode];
  if (!unitM) throw unknownSystem(fileName, `in the unit of length EPSG:${unitCode}`);
  const units = unitM === 1 ? '+units=m' : `+to_meter=${unitM}`;
  const datum = datumOf(keys, fileName);

  const projection = num(keys, 'ProjectionGeoKey');
  if (projection !== undefined && projection > 16000 && projection <= 16160) {
    const south = projection > 16100;
    const zone = projection % 100;
    if (zone >= 1 && zone <= 60) {
      const proj4 = `+proj=utm +zone=${zone}${south ? ' +south' : ''} ${datum} ${units}`;
      return { proj4, name: `UTM zone ${zone}${south ? 'S' : 'N'}`, geographic: false };
    }
  }
  const method = num(keys, 'ProjCoordTransGeoKey');
  const made = method === undefined ? null : projectionOf(method, keys, unitM);
  if (!made) throw unknownSystem(fileName, `user-defined, method ${method ?? 'not named'}`);
  return { proj4: `${made.parameters} ${datum} ${units}`, name: made.name, geographic: false };
}

function projectionOf(
  method: number,
  keys: GeoKeys,
  unitM: number,
): { name: string; parameters: string } | null {
  const deg = angularUnitDeg(keys);
  const lat1 = first(keys, 'ProjStdParallel1GeoKey') * deg;
  const lat2 = first(keys, 'ProjStdParallel2GeoKey') * deg;
  const latKeys = ['ProjNatOriginLatGeoKey', 'ProjFalseOriginLatGeoKey', 'ProjCenterLatGeoKey'];
  const lonKeys = ['ProjNatOriginLongGeoKey', 'ProjFalseOriginLongGeoKey', 'ProjCenterLongGeoKey'];
  const lat0 = first(keys, ...latKeys) * deg;
  const lon0 = first(keys, ...lonKeys, 'ProjStraightVertPoleLongGeoKey') * deg;
  const eastKeys = ['ProjFalseEastingGeoKey', 'ProjFalseOriginEastingGeoKey', 'ProjCenterEastingGeoKey'];
  const northKeys = ['ProjFalseNorthingGeoKey', 'ProjFalseOriginNorthingGeoKey', 'ProjCenterNorthingGeoKey'];
  // proj4 takes false origins in metres whatever the unit of the coordinates.
  const origin = `+x_0=${first(keys, ...eastKeys) * unitM} +y_0=${first(keys, ...northKeys) * unitM}`;
  const k = first(keys, 'ProjScaleAtNatOriginGeoKey', 'ProjScaleAtCenterGeoKey') || 1;
  const at = `+lat_0=${lat0} +lon_0=${lon0} ${origin}`;
  switch (method) {
    case 1:
      return { name: 'Transverse Mercator', parameters: `+proj=tmerc +k=${k} ${at}` };
    case 7:
      return { name: 'Mercator', parameters: `+proj=merc +k=${k} +lon_0=${lon0} ${origin}` };
    case 8:
      return { name: 'Lambert conformal', parameters: `+proj=lcc +lat_1=${lat1} +lat_2=${lat2} ${at}` };
    case 9:
      return { name: 'Lambert conformal', parameters: `+proj=lcc +lat_1=${lat0} +k_0=${k} ${at}` };
    case 10:
      return { name: 'Lambert equal-area', parameters: `+proj=laea ${at}` };
    case 11:
      return { name: 'Albers equal-area', parameters: `+proj=aea +lat_1=${lat1} +lat_2=${lat2} ${at}` };
    case 14:
    case 16:
      return { name: 'oblique stereographic', parameters: `+proj=sterea +k=${k} ${at}` };
    case 24:
      return { name: 'sinusoidal', parameters: `+proj=sinu +lon_0=${lon0} ${origin}` };
    default:
      return null;
  }
}
