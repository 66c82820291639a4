/**
 * When a woody plant is in leaf. Days count from 0 = 1 January and hold at 50 degrees north; they move with latitude
 * and are mirrored by half a year south of the equator.
 *
 * The days are common practice, no source (gardeners' calendars of north-west Europe); the order of the classes
 * follows published phenology (elder, hawthorn and larch first; oak, ash, walnut and locust last).
 */
export interface LeafCalendar {
  readonly evergreen: boolean;
  /** How much of the foliage stays through the winter: 0 for what is bare then, 1 for evergreens. */
  readonly winterShare: number;
  /** The day half of the new leaves are out, and how many days it takes from the first to the last. */
  readonly leafOutDay: number;
  readonly leafOutDays: number;
  /** The day half of the leaves that fall are down, and how many days they take. */
  readonly leafFallDay: number;
  readonly leafFallDays: number;
}

export const LEAF_CLASSES = ['evergreen', 'semi-evergreen', 'early', 'usual', 'late', 'very late'] as const;
export type LeafClass = (typeof LEAF_CLASSES)[number];

const deciduous = (leafOutDay: number, leafFallDay: number): LeafCalendar => ({
  evergreen: false,
  winterShare: 0,
  leafOutDay,
  leafOutDays: 24,
  leafFallDay,
  leafFallDays: 30,
});

export const LEAF_CALENDARS: Record<LeafClass, LeafCalendar> = {
  evergreen: {
    evergreen: true,
    winterShare: 1,
    leafOutDay: 0,
    leafOutDays: 0,
    leafFallDay: 0,
    leafFallDays: 0,
  },
  /** Privets: half of the leaves hang on through a usual winter, the rest fall late; new ones about 15 April. */
  'semi-evergreen': { ...deciduous(104, 324), winterShare: 0.5, leafFallDays: 40 },
  /** Elder, hawthorn, willow, currant: half out about 5 April. */
  early: deciduous(94, 301),
  /** Birch, hazel, alder, apple, lime, maple: about 22 April. */
  usual: deciduous(111, 304),
  /** Oak, beech, sweet chestnut, mulberry: about 5 May. */
  late: deciduous(124, 311),
  /** Walnut, ash, black locust, persimmon: about 14 May. */
  'very late': deciduous(133, 297),
};

/** For plants that lose their leaves and whose species is not known. */
export const DEFAULT_DECIDUOUS: LeafCalendar = LEAF_CALENDARS.usual;

/**
 * Leaf-out comes later by this many days a degree towards the pole. Hopkins' rule (1920, from memory) says 4; along
 * the coasts of Europe it is nearer 2. Between the two: common practice, no source.
 */
const LEAF_OUT_DAYS_PER_DEGREE = 2.5;
/** Leaf-fall comes earlier. Common practice, no source. */
const LEAF_FALL_DAYS_PER_DEGREE = 1.5;
const REFERENCE_LAT_DEG = 50;
/** Outside the temperate belt the rule is not carried on. */
const LEAST_LAT_DEG = 30;
const MOST_LAT_DEG = 65;
const DAYS_A_YEAR = 365;

/** 0 before the ramp, 1 after it, linear between. */
function ramp(day: number, middleDay: number, days: number): number {
  return Math.min(1, Math.max(0, (day - middleDay) / days + 0.5));
}

/** The days half of the leaves are out and down at a latitude, on the calendar of the northern half. */
function northernDays(calendar: LeafCalendar, latDeg: number): { outDay: number; fallDay: number } {
  const poleward = Math.min(MOST_LAT_DEG, Math.max(LEAST_LAT_DEG, Math.abs(latDeg))) - REFERENCE_LAT_DEG;
  return {
    outDay: calendar.leafOutDay + LEAF_OUT_DAYS_PER_DEGREE * poleward,
    fallDay: calendar.leafFallDay - LEAF_FALL_DAYS_PER_DEGREE * poleward,
  };
}

/** The spans in which leaves open and fall, in days from 1 January of a common year; null: evergreen. */
export interface LeafDays {
  readonly out: { readonly firstDay: number; readonly halfDay: number; readonly lastDay: number };
  readonly fall: { readonly firstDay: number; readonly halfDay: number; readonly lastDay: number };
}

export function leafDays(calendar: LeafCalendar, latDeg: number): LeafDays | null {
  if (calendar.evergreen) return null;
  const { outDay, fallDay } = northernDays(calendar, latDeg);
  const here = (day: number) => (latDeg < 0 ? (day + DAYS_A_YEAR / 2) % DAYS_A_YEAR : day);
  const span = (middleDay: number, days: number) => ({
    firstDay: here(middleDay - days / 2),
    halfDay: here(middleDay),
    lastDay: here(middleDay + days / 2),
  });
  return { out: span(outDay, calendar.leafOutDays), fall: span(fallDay, calendar.leafFallDays) };
}

/**
 * Share of full leaf on each day of the year, 0 leafless to 1 full leaf.
 * @param dayCount 365 or 366; index 0 is 1 January. The share is taken at midday.
 */
export function leafShareOfDays(calendar: LeafCalendar, latDeg: number, dayCount: number): Float32Array {
  const shares = new Float32Array(dayCount);
  if (calendar.evergreen) return shares.fill(1);
  const { outDay, fallDay } = northernDays(calendar, latDeg);
  const halfYearDays = latDeg < 0 ? dayCount / 2 : 0;
  for (let day = 0; day < dayCount; day++) {
    const northernDay = (day + 0.5 + halfYearDays) % dayCount;
    const out = ramp(northernDay, outDay, calendar.leafOutDays);
    const fresh = out * (1 - ramp(northernDay, fallDay, calendar.leafFallDays));
    shares[day] = calendar.winterShare + (1 - calendar.winterShare) * fresh;
  }
  return shares;
}
