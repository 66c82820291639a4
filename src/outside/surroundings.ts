import type { LonLat } from '../geo/frame.ts';
import { growPlan } from '../scene/grow-plan.ts';
import { chosenFeatures, featuresOfKind } from '../site/chosen-features.ts';
import type { FeatureId } from '../site/document.ts';
import { plantedBy } from './planted-by.ts';
import type { SiteOutdoors } from './site-outdoors.ts';

interface Outlined {
  readonly id: FeatureId;
  readonly label: string;
  readonly rings: readonly (readonly LonLat[])[];
}

/** What a person finds around them on the day: plain outlines, for the sketch that goes with the stakes. */
export interface Surroundings {
  readonly fields: readonly Outlined[];
  readonly belts: readonly Outlined[];
  readonly blocks: readonly Outlined[];
  readonly walls: readonly Outlined[];
  readonly buildings: readonly Outlined[];
  readonly trees: readonly {
    readonly id: FeatureId;
    readonly tag: string;
    readonly lonLat: LonLat;
    readonly heightM: number;
    readonly spreadM: number;
  }[];
  readonly services: readonly { readonly label: string; readonly line: readonly LonLat[] }[];
}

const asPlaces = (line: readonly (readonly number[])[]): LonLat[] => line.map(([lon, lat]) => [lon, lat]);

/** @param date YYYY-MM-DD */
export function surroundings({ document, frame, layout }: SiteOutdoors, date: string): Surroundings {
  const calendarYear = Number(date.slice(0, 4));
  const isThere = plantedBy(document, calendarYear);
  const features = chosenFeatures(document, layout).filter(isThere);
  const byId = new Map(features.map((feature) => [feature.id, feature]));
  const { things } = growPlan(document, {
    year: calendarYear - document.site.baseYear,
    layout,
    pace: 'usual',
    frame,
  });
  const standing = things.filter(({ id }) => byId.has(id));
  const outlined = (kind: (typeof things)[number]['kind']): Outlined[] =>
    standing.flatMap((thing) =>
      thing.kind === kind ? [{ id: thing.id, label: thing.label, rings: thing.footprint }] : [],
    );
  const sizes = new Map(standing.map((thing) => [thing.id, thing]));
  return {
    fields: featuresOfKind(features, 'field').map(({ id, properties, geometry }) => ({
      id,
      label: properties.name ?? '',
      rings: geometry.coordinates.map(asPlaces),
    })),
    belts: outlined('belt'),
    blocks: outlined('block'),
    walls: outlined('wall'),
    buildings: outlined('building'),
    trees: featuresOfKind(features, 'tree').flatMap(({ id, properties, geometry }) => {
      const size = sizes.get(id);
      const [lon, lat] = geometry.coordinates;
      return size
        ? [
            {
              id,
              tag: properties.tag ?? '',
              lonLat: [lon, lat] as const,
              heightM: size.heightM,
              spreadM: 2 * size.radiusM,
            },
          ]
        : [];
    }),
    services: features.flatMap(({ properties, geometry }) => {
      if (properties.kind !== 'service' || geometry.type === 'Point') return [];
      const lines = geometry.type === 'LineString' ? [geometry.coordinates] : geometry.coordinates;
      const label = properties.name ?? properties.reason ?? '';
      return lines.map((line) => ({ label, line: asPlaces(line) }));
    }),
  };
}
