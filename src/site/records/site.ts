import { z } from 'zod';
import { lightLimitsProblem } from '../../units/bands.ts';
import { choosingRecord } from './choosing.ts';
import { calendarYear, monthDay, share } from './shared.ts';

const windSector = z.looseObject({
  /** Where the wind comes from, degrees clockwise from true north. */
  fromDeg: z.number().min(0).max(360),
  frequency: z.number().min(0),
  meanSpeedMps: z.number().min(0).max(60),
  weibullK: z.number().min(0.5).max(10).optional(),
  /** Absent: the whole year. */
  season: z.enum(['growing', 'rest']).optional(),
});
export type WindSector = z.infer<typeof windSector>;

/** Metres. The published classes run from 0.0002 (open water) to 2 and more (town). */
const roughnessM = z.number().min(0.0001).max(5);

const windRecord = z
  .looseObject({
    /** Above the ground at which it was measured; for a weather file it wins over the file's own. */
    heightM: z.number().positive().optional(),
    calmShare: share.optional(),
    /** Where the seasons differ; wins over `calmShare`. */
    calmShareBySeason: z.looseObject({ growing: share.optional(), rest: share.optional() }).optional(),
    /** Roughness length of the land where it was measured; absent: open farmland. */
    measuredRoughnessM: roughnessM.optional(),
    /** Roughness length of the land around the site; absent: as where it was measured. */
    siteRoughnessM: roughnessM.optional(),
    /** How a person gave it. What was said in words or drawn is the wind of the site itself and is not moved. */
    origin: z.enum(['words', 'drawn', 'table']).optional(),
    /** Absent: those of the weather file. */
    sectors: z.array(windSector).min(1).optional(),
  })
  .refine(({ heightM, measuredRoughnessM }) => (heightM ?? 10) > (measuredRoughnessM ?? 0), {
    path: ['heightM'],
    error: 'a height above the roughness length of the land where it was measured',
  });
export type WindRecord = z.infer<typeof windRecord>;

/** Three or more points of known ground height; used before the plane, after the terrain file. */
const spotLevel = z.looseObject({ lonLat: z.tuple([z.number(), z.number()]), elevationM: z.number() });

/** A picture of a plan or an air photo laid on the ground: the four corners of the picture, from its top left clockwise. */
const groundPicture = z.looseObject({
  file: z.string(),
  cornersLonLat: z.array(z.tuple([z.number(), z.number()])).length(4),
  opacity: share.optional(),
});

/** What planting costs, in the person's own money; absent members are not known. */
const prices = z.looseObject({
  /** As it is to stand beside a sum, such as CAD. */
  currency: z.string().optional(),
  perTree: z.number().min(0).optional(),
  perBeltM: z.number().min(0).optional(),
  /** Of a wall, fence or net. */
  perWallM: z.number().min(0).optional(),
});
export type Prices = z.infer<typeof prices>;

/** Mixed: half of the foliage stays in winter. */
const SURFACE_LEAVES = ['deciduous', 'mixed', 'evergreen'] as const;
export type SurfaceLeaves = (typeof SURFACE_LEAVES)[number];

export const CURRENT_FORMAT_VERSION = 1;

/** What a site has besides features: the foreign member `site` of the collection. */
export const siteRecord = z.looseObject({
  formatVersion: z.literal(CURRENT_FORMAT_VERSION),
  name: z.string(),
  timeZone: z.string(),
  baseYear: calendarYear,
  /** Where the site is when nothing has been drawn on it. */
  placeLonLat: z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)]).optional(),
  terrainFile: z.string().nullish(),
  terrainPlane: z
    .looseObject({ fallDeg: z.number().min(0).max(60), towardDeg: z.number().min(0).max(360) })
    .nullish(),
  spotLevels: z.array(spotLevel).optional(),
  /** Tops of what stands around the site, on the terrain file's datum; never added to what is drawn. */
  surfaceFile: z.string().nullish(),
  /** What its woods are made of. */
  surfaceLeaves: z.enum(SURFACE_LEAVES).optional(),
  weatherFile: z.string().nullish(),
  wind: windRecord.nullish(),
  sunshineShareByMonth: z.array(share).length(12).nullish(),
  /**
   * Growth in full shelter against growth in the open: as it is reckoned with, and the most that is thought possible.
   * Absent: 1 (not reckoned with), and 1.2.
   */
  shelterEffect: z
    .looseObject({ usual: z.number().min(1).max(2).optional(), most: z.number().min(1).max(2).optional() })
    .refine(({ usual = 1, most = 2 }) => most >= usual, { path: ['most'], error: 'no less than usual' })
    .optional(),
  /** How well plants grow here against usual ground: scales heights and spreads; absent: 1. */
  vigour: z.number().min(0.3).max(2).optional(),
  growingSeason: z.looseObject({ firstDay: monthDay, lastDay: monthDay }).optional(),
  lightToKeep: z.looseObject({ share, areaShare: share }).optional(),
  /** Shares of open light at which half shade, light shade, fruiting light and open begin. */
  lightBands: z
    .array(share)
    .refine((limits) => lightLimitsProblem(limits) === null, {
      error: 'four shares above 0 and below 1 that rise, such as [0.3, 0.5, 0.68, 0.84]',
    })
    .optional(),
  species: z.array(z.looseObject({ name: z.string() })).optional(),
  layouts: z.array(z.looseObject({ name: z.string() })).optional(),
  prices: prices.optional(),
  choosing: choosingRecord.optional(),
  pictures: z.array(groundPicture).optional(),
  /** Address pattern of map tiles a person has added: {z}/{x}/{y}. */
  tileAddress: z.string().nullish(),
});
export type SiteRecord = z.infer<typeof siteRecord>;

/** What is taken where the site record is silent. */
export const siteDefaults = {
  lightToKeep: { share: 0.4, areaShare: 0.7 },
  /** The most: what published work allows for (years/shelter-effect.ts). */
  shelterEffect: { usual: 1, most: 1.2 },
  /** n/N of every month where neither sunshine nor a weather file is given. */
  sunshineShare: 0.45,
  wind: { heightM: 10, calmShare: 0, weibullK: 2 },
} as const;

/** The growing season by default: April to September, south of the equator October to March. */
export const defaultGrowingSeason = (latDeg: number): { firstDay: string; lastDay: string } =>
  latDeg < 0 ? { firstDay: '10-01', lastDay: '03-31' } : { firstDay: '04-01', lastDay: '09-30' };
