import { beside, box, CENTRE, feature, type Place } from '../cli/small-site.ts';

const line = (...spots: readonly (readonly [number, number])[]): Place[] =>
  spots.map(([eastM, northM]) => beside(CENTRE, eastM, northM));

/** A level field of 60 by 40 m in west wind: a hornbeam belt and two apples, planted together or five years apart. */
export function pairOfLayouts(site: Record<string, unknown> = {}) {
  const belt = (layout: string, id: string) =>
    feature(id, 'LineString', line([-28, -18], [-28, 18]), {
      kind: 'belt',
      layout,
      name: 'West belt',
      status: 'planned',
      species: 'Carpinus betulus',
      plantedYear: 2027,
      widthM: 3,
    });
  const tree = (layout: string, tag: string, id: string, eastM: number, plantedYear: number) =>
    feature(id, 'Point', beside(CENTRE, eastM, 5), {
      kind: 'tree',
      layout,
      tag,
      status: 'planned',
      species: 'Malus domestica',
      plantedYear,
    });
  return {
    type: 'FeatureCollection',
    site: {
      formatVersion: 1,
      name: 'Pair Close',
      timeZone: 'America/Halifax',
      baseYear: 2027,
      sunshineShareByMonth: Array(12).fill(0.5),
      wind: {
        heightM: 10,
        calmShare: 0,
        sectors: [{ fromDeg: 270, frequency: 1, meanSpeedMps: 5, weibullK: 2 }],
      },
      layouts: [{ name: 'Belts first' }, { name: 'At once' }],
      ...site,
    },
    features: [
      feature('f1', 'Polygon', [box(CENTRE, 30, 20)], { kind: 'field', name: 'Pair Close' }),
      belt('Belts first', 'b1'),
      tree('Belts first', 'F1', 't1', -5, 2032),
      tree('Belts first', 'F2', 't2', 10, 2032),
      belt('At once', 'b2'),
      tree('At once', 'F1', 't3', -5, 2027),
      tree('At once', 'F2', 't4', 10, 2027),
    ],
  };
}
