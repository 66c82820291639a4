import { expect, test } from 'vitest';
import { toLocal } from '../../src/geo/frame.ts';
import { LEAF_CLASSES, type LeafClass } from '../../src/growth/leaf-calendar.ts';
import { computeLight } from '../../src/light/compute-light.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { lightScene } from '../../src/scene/build-scene.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { placeBeside } from '../../src/site/places.ts';

const CELL_M = 2;
const HALF_M = 20;
const SIDE = (2 * HALF_M) / CELL_M;

/** Five trees in a row with room between them, each of its leaf class; southern sites are the northern one turned over. */
function monthlyShares(latDeg: number, classes: readonly LeafClass[]): Float32Array {
  // In the middle of a UTM zone, where grid north is true north on both sides.
  const beside = (eastM: number, northM: number) =>
    placeBeside([3, latDeg], eastM, Math.sign(latDeg) * northM);
  const box = [
    [-30, -30],
    [30, -30],
    [30, 30],
    [-30, 30],
    [-30, -30],
  ].map(([e, n]) => beside(e, n));
  const { document } = parseSite(
    JSON.stringify({
      type: 'FeatureCollection',
      site: {
        formatVersion: 1,
        name: 'Turned over',
        timeZone: 'UTC',
        baseYear: 2027,
        sunshineShareByMonth: Array(12).fill(0.5),
        species: classes.map((leafClass, i) => ({
          name: `Tree of class ${i}`,
          matureHeightM: 9,
          leafClass,
          transmittanceLeafOn: 0.15,
          transmittanceLeafOff: leafClass === 'evergreen' ? 0.15 : 0.5,
        })),
      },
      features: [
        {
          type: 'Feature',
          id: 'f',
          geometry: { type: 'Polygon', coordinates: [box] },
          properties: { kind: 'field' },
        },
        ...classes.map((_, i) => ({
          type: 'Feature',
          id: `t${i}`,
          geometry: { type: 'Point', coordinates: beside(-16 + 8 * i, -2 * i) },
          properties: {
            kind: 'tree',
            species: `Tree of class ${i}`,
            heightM: 8.8,
            measuredYear: 2027,
            crownRadiusM: 2.5,
          },
        })),
      ],
    }),
    'turned-over.site.geojson',
  );
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  const { scene } = lightScene(document, {
    year: 0,
    layout: null,
    pace: 'usual',
    frame,
    ground,
    weather: null,
  });
  const [x, y] = toLocal(frame, [3, latDeg]);
  const grid = { columns: SIDE, rows: SIDE, cellM: CELL_M, westM: x - HALF_M, northM: y + HALF_M };
  return runToEnd(computeLight({ scene, grid, readingHeightM: 0.1 })).lightShare;
}

/** Differences of the north's months with the turned-over south's six months later. */
function differences(classes: readonly LeafClass[]): { mean: number; worst: number; winter: number } {
  const [north, south] = [monthlyShares(45, classes), monthlyShares(-45, classes)];
  const cells = SIDE * SIDE;
  let [sum, worst, winter] = [0, 0, 0];
  for (let month = 0; month < 12; month++)
    for (let cell = 0; cell < cells; cell++) {
      const mirrored = (SIDE - 1 - Math.floor(cell / SIDE)) * SIDE + (cell % SIDE);
      const a = north[month * cells + cell];
      const b = south[((month + 6) % 12) * cells + mirrored];
      sum += Math.abs(a - b);
      worst = Math.max(worst, Math.abs(a - b));
      if (month === 0) winter += a / cells;
    }
  return { mean: sum / (12 * cells), worst, winter };
}

test('light under trees of every leaf class is the same half a year later on the other half of the earth', () => {
  const classes = LEAF_CLASSES.filter((name) => name !== 'evergreen');
  expect(classes).toHaveLength(5);
  const leaves = differences(classes);
  // What is left is the sun's: months of other lengths and an orbit that is no circle. Evergreens show how much that is.
  const sun = differences(classes.map(() => 'evergreen'));
  console.log(
    `half a year later, mean and worst difference of a month's light: ${leaves.mean.toFixed(4)} and ${leaves.worst.toFixed(3)}, of evergreens ${sun.mean.toFixed(4)} and ${sun.worst.toFixed(3)}`,
  );
  expect(leaves.mean).toBeLessThan(1.1 * sun.mean);
  expect(leaves.worst).toBeLessThan(sun.worst + 0.005);
  // The leaves do matter: without them more light comes in winter.
  expect(leaves.winter).toBeGreaterThan(sun.winter + 0.02);
});
