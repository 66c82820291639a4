/** What bridges the first years of a belt: a net along it, or a row of a faster species. */
import { type Frame, type LocalXY, toLonLat } from '../geo/frame.ts';
import { beltHabitOf } from '../plants/crown-density.ts';
import { findSpecies, speciesList } from '../plants/find-species.ts';
import type { Species } from '../plants/species.ts';
import type { SceneOptions } from '../scene/options.ts';
import { beltOrBlockAtYear } from '../scene/stand-at-year.ts';
import { addFeature, type Drawn } from '../site/actions/add-feature.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { XY } from '../site/plane-geometry.ts';
import { type BeltLike, beltShape, isPlanned, plantedYearOf } from './belt-shape.ts';
import type { BeltWhen } from './years-to-protect.ts';

/** Nets of this height and openness stand on posts of their own; taller ones need an engineer. Common practice, no source. */
const NET_HEIGHT_M = 3;
const NET_POROSITY = 0.5;
/** Room to work between the belt and what bridges it, m. Common practice, no source. */
const NET_ROOM_M = 1;
const ROW_ROOM_M = 1.5;
/** A nurse row must gain so many years to be worth it. Common practice, no source. */
const LEAST_YEARS_GAINED = 2;
/** Height at which species are compared against the belt: two thirds of its 20-year height. */
const COMPARED_SHARE = 2 / 3;

export interface Bridge {
  readonly kind: 'net' | 'nurse row';
  readonly label: string;
  /** Common name of the row; null for a net. */
  readonly nurse: string | null;
  readonly drawn: Drawn;
  /** Years after the base year, both included. */
  readonly fromYear: number;
  readonly toYear: number;
  readonly cautions: readonly string[];
}

/** What a bridge gains in one year. */
export interface BridgeGain {
  readonly year: number;
  /** Share of the field on which the belt alone cuts the wind from its side by 30 % or more, without and with the bridge. */
  readonly protectedWithout: number;
  readonly protectedWith: number;
  /** Mean cut of the growing season's wind over the field, all that stands acting. */
  readonly meanCutWithout: number;
  readonly meanCutWith: number;
}

export interface BridgeOffer extends Bridge {
  readonly gains: readonly BridgeGain[];
}

/** A line moved sideways by metres, to the left of its course; corners along their mitre. */
export function besideLine(line: readonly XY[], leftM: number): LocalXY[] {
  const normal = (a: XY, b: XY): XY => {
    const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    return [-(b[1] - a[1]) / lengthM, (b[0] - a[0]) / lengthM];
  };
  return line.map((p, i): LocalXY => {
    const before = i > 0 ? normal(line[i - 1], p) : null;
    const after = i < line.length - 1 ? normal(p, line[i + 1]) : null;
    const [n1, n2] = [before ?? after ?? [0, 0], after ?? before ?? [0, 0]];
    const scale = leftM / Math.max(0.3, 1 + n1[0] * n2[0] + n1[1] * n2[1]);
    return [p[0] + (n1[0] + n2[0]) * scale, p[1] + (n1[1] + n2[1]) * scale];
  });
}

/** +1 where the points lie mostly to the left of a line's course, otherwise -1. */
export function sideOfLine(line: readonly XY[], points: readonly XY[]): 1 | -1 {
  const [a, b] = [line[0], line[line.length - 1]];
  const left = points.filter(([x, y]) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) > 0).length;
  return left * 2 >= points.length ? 1 : -1;
}

export const asLine = (frame: Frame, line: readonly LocalXY[]) => ({
  type: 'LineString' as const,
  coordinates: line.map((xy): [number, number] => {
    const [lon, lat] = toLonLat(frame, xy);
    return [lon, lat];
  }),
});

/**
 * What would bridge a planned belt until it protects at slow growth; empty for a block, a standing belt, or one that
 * protects in its first year.
 * @param points over the field: the bridge stands on their side, on the person's own ground.
 */
export function bridges(
  document: SiteDocument,
  belt: BeltLike,
  when: BeltWhen,
  options: SceneOptions,
  points: readonly XY[],
): Bridge[] {
  const shape = beltShape(document, belt, options.frame, options);
  if (shape.isArea || !isPlanned(belt) || !shape.judged || !when.protects) return [];
  const fromYear = Math.max(0, plantedYearOf(document, belt));
  const untilYear = when.usefulFrom.slow ?? when.usefulFrom.usual ?? when.years[when.years.length - 1];
  const toYear = untilYear - 1;
  if (toYear < fromYear) return [];
  const left = sideOfLine(shape.line, points);
  const { baseYear } = document.site;
  const layout = belt.properties.layout === undefined ? {} : { layout: belt.properties.layout };
  const netLine = besideLine(shape.line, left * (shape.judged.widthM / 2 + NET_ROOM_M));
  const net: Bridge = {
    kind: 'net',
    label: `Net for ${shape.label}`,
    nurse: null,
    drawn: {
      properties: {
        kind: 'wall',
        name: `Net for ${shape.label}`,
        heightM: NET_HEIGHT_M,
        opticalPorosity: NET_POROSITY,
        fromYear: baseYear + fromYear,
        toYear: baseYear + toYear,
        ...layout,
      },
      geometry: asLine(options.frame, netLine),
    },
    fromYear,
    toYear,
    cautions: [
      'A net in a gale pulls hard on its posts: have posts and stays set by somebody who knows them.',
    ],
  };
  const nurse = fasterSpecies(document, belt, options);
  if (!nurse) return [net];
  const habit = beltHabitOf(nurse);
  const rowName = `${nurse.commonName.charAt(0).toUpperCase()}${nurse.commonName.slice(1)} beside ${shape.label}`;
  const rowLine = besideLine(shape.line, left * (shape.judged.widthM / 2 + ROW_ROOM_M + habit.widthM / 2));
  return [
    net,
    {
      kind: 'nurse row',
      label: rowName,
      nurse: nurse.commonName,
      drawn: {
        properties: {
          kind: 'belt',
          name: rowName,
          status: 'planned',
          species: nurse.botanicalName,
          plantedYear: baseYear + fromYear,
          removedYear: baseYear + toYear + 1,
          widthM: habit.widthM,
          ...layout,
        },
        geometry: asLine(options.frame, rowLine),
      },
      fromYear,
      toYear,
      cautions: nurse.cautions,
    },
  ];
}

/**
 * The species without cautions that is soonest as tall as two thirds of the belt at twenty years; null where none is
 * by two years.
 */
function fasterSpecies(document: SiteDocument, belt: BeltLike, options: SceneOptions): Species | null {
  const own = findSpecies(belt.properties.species, document.site.species);
  const shape = beltShape(document, belt, options.frame, options);
  const wantedM = COMPARED_SHARE * (shape.judged?.heightM ?? 0);
  const planted = plantedYearOf(document, belt);
  const yearsUntil = (properties: BeltLike['properties']): number => {
    for (let age = 0; age <= 40; age++) {
      const stand = beltOrBlockAtYear(document, { ...belt, properties } as BeltLike, {
        ...options,
        pace: 'usual',
        year: planted + age,
      });
      if (stand && stand.heightM >= wantedM) return age;
    }
    return Number.POSITIVE_INFINITY;
  };
  const ownYears = yearsUntil(belt.properties);
  const tried = speciesList(document.site.species)
    .all.filter((species) => species !== own && species.belt !== null && species.cautions.length === 0)
    .map((species) => ({
      species,
      years: yearsUntil({
        kind: 'belt',
        status: 'planned',
        species: species.botanicalName,
        plantedYear: document.site.baseYear + planted,
      }),
    }))
    .sort((a, b) => a.years - b.years);
  const best = tried[0];
  return best && best.years <= ownYears - LEAST_YEARS_GAINED ? best.species : null;
}

/** The site with a bridge in it, and the bridge's id. */
export const withBridge = (
  document: SiteDocument,
  { drawn }: Bridge,
): { document: SiteDocument; id: FeatureId } => addFeature(document, drawn);

/** The same bridge with its last year set. */
export function takenDownAfter(bridge: Bridge, toYear: number, baseYear: number): Bridge {
  const { drawn } = bridge;
  const until =
    drawn.properties.kind === 'wall' ? { toYear: baseYear + toYear } : { removedYear: baseYear + toYear + 1 };
  return { ...bridge, toYear, drawn: { ...drawn, properties: { ...drawn.properties, ...until } } as Drawn };
}
