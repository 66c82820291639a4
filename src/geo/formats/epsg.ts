import { BadInputError } from '../../units/bad-input.ts';
import { PROJECTED_SYSTEMS } from './epsg-table.ts';

/** Geographic systems that agree with WGS 84 to about two metres: degrees of longitude and latitude as they are. */
const GEOGRAPHIC_AS_WGS84 = new Set([
  4326, 4979, 4269, 4258, 4937, 4617, 4955, 4283, 7844, 4167, 4171, 4190, 5340, 4612, 6668, 4490, 4674, 4619,
  4152, 4759, 6318, 6783, 4765, 4761, 4133, 4661, 4669, 4173, 4180, 4737, 4148, 4151, 8252, 8255, 4176,
]);

/** Geographic systems on older datums, with published Helmert parameters to WGS 84. */
const GEOGRAPHIC_OLDER: Readonly<Record<number, string>> = {
  4277: '+ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489',
  4289: '+ellps=bessel +towgs84=565.4171,50.3319,465.5524,-0.398957,0.343988,-1.8774,4.0725',
  4312: '+ellps=bessel +towgs84=577.326,90.129,463.919,5.137,1.474,5.297,2.4232',
  4313: '+ellps=intl +towgs84=-106.8686,52.2978,-103.7239,0.3366,-0.457,1.8422,-1.2747',
  4314: '+ellps=bessel +towgs84=598.1,73.7,418.2,0.202,0.045,-2.455,6.7',
  4322: '+ellps=WGS72 +towgs84=0,0,4.5,0,0,0.554,0.2263',
  4230: '+ellps=intl +towgs84=-87,-98,-121',
  4267: '+ellps=clrk66 +towgs84=-8,160,176',
};

/** UTM families: first code, last code, zone of the first code, ellipsoid or datum, south or not. */
const UTM_FAMILIES: readonly [number, number, number, string, boolean][] = [
  [32601, 32660, 1, '+datum=WGS84', false],
  [32701, 32760, 1, '+datum=WGS84', true],
  [26901, 26923, 1, '+ellps=GRS80', false], // NAD83
  [3708, 3726, 1, '+ellps=GRS80', false], // NAD83(NSRS2007)
  [3740, 3743, 10, '+ellps=GRS80', false], // NAD83(HARN)
  [3744, 3749, 14, '+ellps=GRS80', false],
  [6328, 6348, 59, '+ellps=GRS80', false], // NAD83(2011), zones 59, 60, 1 to 19
  [2955, 2957, 11, '+ellps=GRS80', false], // NAD83(CSRS)
  [2958, 2962, 17, '+ellps=GRS80', false],
  [3154, 3157, 7, '+ellps=GRS80', false],
  [3158, 3160, 14, '+ellps=GRS80', false],
  [22607, 22622, 7, '+ellps=GRS80', false],
  [22707, 22722, 7, '+ellps=GRS80', false],
  [25828, 25838, 28, '+ellps=GRS80', false], // ETRS89
  [3040, 3049, 28, '+ellps=GRS80', false], // ETRS89, northing named first; files hold easting first all the same
  [31965, 31976, 11, '+ellps=GRS80', false], // SIRGAS 2000
  [31977, 31985, 17, '+ellps=GRS80', true],
  [28348, 28358, 48, '+ellps=GRS80', true], // GDA94 / MGA
  [7846, 7859, 46, '+ellps=GRS80', true], // GDA2020 / MGA
  [26701, 26722, 1, '+ellps=clrk66 +towgs84=-8,160,176', false], // NAD27, to some 10 m
  [23028, 23038, 28, '+ellps=intl +towgs84=-87,-98,-121', false], // ED50, to some 5 m
];

/**
 * proj4 definition of a geographic system by EPSG code; null when it is not known.
 */
export function geographicProj4(code: number): string | null {
  if (GEOGRAPHIC_AS_WGS84.has(code)) return '+proj=longlat +datum=WGS84';
  const older = GEOGRAPHIC_OLDER[code];
  return older ? `+proj=longlat ${older}` : null;
}

/** proj4 definition of a projected or geographic system by EPSG code; null when it is not known. */
export function proj4OfEpsg(code: number): string | null {
  for (const [first, last, firstZone, datum, south] of UTM_FAMILIES) {
    if (code < first || code > last) continue;
    const zone = ((firstZone - 1 + code - first) % 60) + 1;
    return `+proj=utm +zone=${zone}${south ? ' +south' : ''} ${datum} +units=m`;
  }
  return PROJECTED_SYSTEMS[code] ?? geographicProj4(code);
}

/** The sentence for a system that is not known, with what to do about it. */
export function unknownSystem(fileName: string, system: string): BadInputError {
  return new BadInputError(
    `${fileName}: its coordinate system (${system}) is not known here; save it again in WGS 84 (EPSG:4326) or a UTM zone with any GIS and open that.`,
  );
}
