import { expect, test } from 'vitest';
import { type HorizonField, markBehindLand } from '../../src/light/horizon.ts';
import { computeHorizons } from '../../src/light/horizon-sweep.ts';
import { ALL_ROWS, shadowTile } from '../../src/light/shadow-tile.ts';
import { cellCentreX, cellCentreY, type Grid, type GridSpec, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { gridOf, marchedHorizon, rollingLand } from '../reference/plain-horizon.ts';

const DEG = 180 / Math.PI;
/** The field of view of the tests: 60 m by 40 m around the middle. */
const MIDDLE: GridSpec = { columns: 60, rows: 40, cellM: 1, westM: -30, northM: 20 };
const swept = (land: Grid, grid = MIDDLE, readingHeightM = 0): HorizonField => {
  const field = runToEnd(computeHorizons(land, grid, readingHeightM));
  if (!field) throw new Error('no horizon');
  return field;
};
interface Seen {
  readonly xM: number;
  readonly yM: number;
  readonly azimuthRad: number;
  readonly altitudeDeg: number;
}
function* everyView(field: HorizonField): Generator<Seen> {
  for (let a = 0; a < field.azimuths; a++)
    for (let j = 0; j < field.rows; j++)
      for (let i = 0; i < field.columns; i++)
        yield {
          xM: field.westM + i * field.spacingM,
          yM: field.northM - j * field.spacingM,
          azimuthRad: (2 * Math.PI * a) / field.azimuths,
          altitudeDeg: Math.atan(field.tangent[(a * field.rows + j) * field.columns + i]) * DEG,
        };
}
/** Largest difference from what is expected, degrees. */
function worstDeg(field: HorizonField, expectedRad: (view: Seen) => number): number {
  let worst = 0;
  for (const view of everyView(field)) {
    const miss = Math.abs(view.altitudeDeg - expectedRad(view) * DEG);
    if (!(miss <= worst)) worst = miss;
  }
  return worst;
}

test('level land, and land below the readings, has no horizon', () => {
  expect(
    runToEnd(
      computeHorizons(
        gridOf(80, 80, 5, () => 7),
        MIDDLE,
        0.1,
      ),
    ),
  ).toBeNull();
  const mesa = gridOf(80, 80, 5, (x, y) => -0.2 * Math.max(0, Math.hypot(x, y) - 60));
  expect(runToEnd(computeHorizons(mesa, MIDDLE, 0.1))).toBeNull();
});

test.each([2, 10, 30])(
  'a plane of %d m cells stands up by atan(tan slope * cos(azimuth - upslope))',
  (cellM) => {
    for (const [slopeDeg, upslopeDeg] of [
      [5, 0],
      [14, 117],
      [30, 200],
      [8, 292.5],
    ]) {
      const rise = Math.tan(slopeDeg / DEG);
      const up = upslopeDeg / DEG;
      const edge = Math.round(600 / cellM);
      const land = gridOf(edge, edge, cellM, (x, y) => rise * (x * Math.sin(up) + y * Math.cos(up)));
      const field = swept(land);
      const miss = worstDeg(field, ({ azimuthRad }) =>
        Math.max(0, Math.atan(rise * Math.cos(azimuthRad - up))),
      );
      expect(miss).toBeLessThan(0.01);
    }
  },
);

test('an endless scarp stands at its profile angle, less the farther the view turns from it', () => {
  // A plateau 30 m high whose face rises over the cell from x = 98 to x = 100; the edge of the land is 6 km off.
  const land = gridOf(400, 6000, 2, (x) => (x > 100 ? 30 : 0));
  const edgeM = 101;
  const miss = worstDeg(swept(land), ({ xM, yM, azimuthRad }) => {
    const across = Math.sin(azimuthRad);
    if (across < 1e-9) return 0;
    const distanceM = (edgeM - xM) / across;
    // The scarp ends with the raster.
    return Math.abs(yM + distanceM * Math.cos(azimuthRad)) < 5999 ? Math.atan(30 / distanceM) : 0;
  });
  expect(miss).toBeLessThan(0.02);
});

test.each([10, 20, 30])(
  'seen from its middle, the rim of a basin stands at %d degrees all round',
  (altDeg) => {
    const rim = 400 * Math.tan(altDeg / DEG);
    // Cells of 1 m: coarser ones cut the edge of the rim off.
    const land = gridOf(850, 850, 1, (x, y) => rim * Math.min(1, (Math.hypot(x, y) / 400) ** 2));
    const middle: GridSpec = { columns: 1, rows: 1, cellM: 0.5, westM: -0.25, northM: 0.25 };
    const field = swept(land, middle);
    const miss = worstDeg(field, ({ xM, yM, azimuthRad }) => {
      // The rim is met where the ray leaves the circle of 400 m.
      const along = xM * Math.sin(azimuthRad) + yM * Math.cos(azimuthRad);
      const distanceM = -along + Math.sqrt(along * along - xM * xM - yM * yM + 400 * 400);
      const z = rim * (Math.hypot(xM, yM) / 400) ** 2;
      return Math.atan((rim - z) / distanceM);
    });
    expect(miss).toBeLessThan(0.05);
  },
);

test('a cone shows its outline from outside: its tip ahead, its flank beside, nothing past its foot', () => {
  const heightM = 60;
  const radiusM = 200;
  const tip = { x: 380, y: -140 };
  const land = gridOf(700, 500, 2, (x, y) =>
    Math.max(0, heightM * (1 - Math.hypot(x - tip.x, y - tip.y) / radiusM)),
  );
  const errors: number[] = [];
  for (const { xM, yM, azimuthRad, altitudeDeg } of everyView(swept(land))) {
    // Along a ray that passes the tip at a distance, the cone is a hyperbola: its highest tangent by fine search.
    const dx = tip.x - xM;
    const dy = tip.y - yM;
    const ahead = dx * Math.sin(azimuthRad) + dy * Math.cos(azimuthRad);
    const aside = dx * Math.cos(azimuthRad) - dy * Math.sin(azimuthRad);
    let best = 0;
    if (ahead > 0 && Math.abs(aside) < radiusM)
      for (let s = ahead - radiusM; s < ahead + 1; s += 0.25)
        best = Math.max(best, (heightM * (1 - Math.hypot(s - ahead, aside) / radiusM)) / s);
    errors.push(Math.abs(altitudeDeg - Math.atan(best) * DEG));
  }
  errors.sort((a, b) => a - b);
  // The tip itself lies between four centres of the raster, up to 0.4 m lower there.
  expect(errors[errors.length - 1]).toBeLessThan(0.1);
  expect(errors[Math.floor(errors.length * 0.99)]).toBeLessThan(0.02);
});

test.each([
  [2, 0.15],
  [5, 0.2],
])('on rolling land of %d m cells it agrees with a plain marcher', (cellM, p99Deg) => {
  const errors: number[] = [];
  for (let seed = 1; seed <= 8; seed++) {
    const land = gridOf(Math.round(900 / cellM), Math.round(800 / cellM), cellM, rollingLand(seed));
    const random = seededRandom(seed);
    const readingHeightM = seed % 2 === 0 ? 0.1 : 0.8;
    const field = swept(land, MIDDLE, readingHeightM);
    const views = [...everyView(field)];
    for (let k = 0; k < 125; k++) {
      const { xM, yM, azimuthRad, altitudeDeg } = views[Math.floor(random() * views.length)];
      const zM = sampleGrid(land, xM, yM) + readingHeightM;
      errors.push(Math.abs(altitudeDeg - Math.atan(marchedHorizon(land, xM, yM, zM, azimuthRad)) * DEG));
    }
  }
  errors.sort((a, b) => a - b);
  const at = (share: number) => errors[Math.floor(share * (errors.length - 1))];
  console.log(
    `horizons against the marcher, ${cellM} m cells, degrees: p50 ${at(0.5).toFixed(4)}, p90 ${at(0.9).toFixed(3)}, p99 ${at(0.99).toFixed(3)}, most ${at(1).toFixed(3)}`,
  );
  expect(at(0.5)).toBeLessThan(0.005);
  expect(at(0.99)).toBeLessThan(p99Deg);
});

test('on rolling land the cells of any direction are marked as a plain marcher finds them', () => {
  const misses: number[] = [];
  let looked = 0;
  for (let seed = 1; seed <= 4; seed++) {
    const land = gridOf(360, 320, 2.5, rollingLand(seed));
    const field = swept(land, MIDDLE, 0.1);
    const tile = shadowTile(MIDDLE, ALL_ROWS, 0, 0, land, 0.1);
    const random = seededRandom(seed + 40);
    const behind = new Uint8Array(tile.stride * tile.rows);
    for (let k = 0; k < 60; k++) {
      // Low, where land is in the way; the azimuth lies anywhere between those that were swept.
      const azimuthRad = 2 * Math.PI * random();
      const altitudeDeg = 1 + 14 * random();
      behind.fill(0);
      markBehindLand(tile, field, azimuthRad, Math.tan(altitudeDeg / DEG), behind);
      for (let n = 0; n < 8; n++) {
        const [c, r] = [Math.floor(tile.columns * random()), Math.floor(tile.rows * random())];
        const cell = r * tile.stride + c;
        const horizonDeg =
          DEG *
          Math.atan(
            marchedHorizon(
              land,
              cellCentreX(MIDDLE, c),
              cellCentreY(MIDDLE, r),
              tile.readingZM[cell],
              azimuthRad,
              land.cellM / 10,
            ),
          );
        looked++;
        if (horizonDeg > altitudeDeg !== (behind[cell] === 1))
          misses.push(Math.abs(horizonDeg - altitudeDeg));
      }
    }
  }
  misses.sort((a, b) => a - b);
  const most = misses[misses.length - 1] ?? 0;
  console.log(
    `cells marked against the marcher: ${misses.length} of ${looked} otherwise, the horizon at most ${most.toFixed(2)} degrees off`,
  );
  // Azimuths are three degrees apart: a crest between two of them is met by a straight line from one to the other.
  expect(misses.length / looked).toBeLessThan(0.01);
  expect(most).toBeLessThan(0.5);
});

test('a ridge near and a range far away both show', () => {
  const near = swept(gridOf(401, 401, 2, (x) => Math.max(0, 20 - Math.abs(x - 100) / 2)));
  expect(worstDegAlong(near, 90, ({ xM }) => 20 / (100 - xM))).toBeLessThan(0.02);
  const far = swept(gridOf(701, 101, 30, (x) => Math.max(0, 900 - Math.abs(x + 9000) / 3)));
  expect(worstDegAlong(far, 270, ({ xM }) => 900 / (9000 + xM))).toBeLessThan(0.01);

  function worstDegAlong(field: HorizonField, azimuthDeg: number, tangent: (view: Seen) => number): number {
    let worst = 0;
    for (const view of everyView(field))
      if (Math.abs(view.azimuthRad * DEG - azimuthDeg) < 1e-6)
        worst = Math.max(worst, Math.abs(view.altitudeDeg - Math.atan(tangent(view)) * DEG));
    return worst;
  }
});

test('holes in the ground hide nothing, and beside them the rest is still seen', () => {
  const land = gridOf(200, 200, 2, (x) => (x > 150 ? 40 : 0));
  const holed = { ...land, values: land.values.map((z) => (z === 40 ? Number.NaN : z)) };
  expect(runToEnd(computeHorizons(holed, MIDDLE, 0.1))).toBeNull();
  const gap = gridOf(200, 200, 2, (x, y) => (x > 150 ? (Math.abs(y) < 60 ? Number.NaN : 40) : 0));
  const field = swept(gap);
  for (const { azimuthRad, altitudeDeg } of everyView(field)) {
    if (Math.abs(azimuthRad * DEG - 90) < 1e-6) expect(altitudeDeg).toBe(0);
    if (Math.abs(azimuthRad * DEG - 51) < 1e-6) expect(altitudeDeg).toBeGreaterThan(5);
  }
});

test('what a station sees does not depend on how the cells were cut', () => {
  const land = gridOf(300, 260, 4, rollingLand(5));
  const whole = swept(land, { columns: 120, rows: 90, cellM: 1, westM: -70, northM: 33 }, 0.1);
  const part = swept(land, { columns: 31, rows: 17, cellM: 1, westM: -20, northM: -11 }, 0.1);
  const seen = new Map<string, number>();
  const key = ({ xM, yM, azimuthRad }: Seen) => [xM.toFixed(3), yM.toFixed(3), azimuthRad.toFixed(6)].join();
  for (const view of everyView(whole)) seen.set(key(view), view.altitudeDeg);
  const others = [...everyView(part)].filter((view) => view.altitudeDeg !== seen.get(key(view)));
  expect(others).toEqual([]);
});

test('turning the land by a quarter turns its horizons', () => {
  const height = rollingLand(9);
  const square: GridSpec = { columns: 40, rows: 40, cellM: 1, westM: -20, northM: 20 };
  const asIs = swept(gridOf(240, 240, 3, height), square, 0.1);
  const turned = swept(
    gridOf(240, 240, 3, (x, y) => height(-y, x)),
    square,
    0.1,
  );
  const at = (field: HorizonField, a: number, i: number, j: number) =>
    field.tangent[((a % field.azimuths) * field.rows + j) * field.columns + i];
  const n = asIs.columns;
  const errors: number[] = [];
  for (let a = 0; a < asIs.azimuths; a++)
    for (let j = 0; j < n; j++)
      for (let i = 0; i < n; i++)
        // To the right: what lay north lies east.
        errors.push(Math.abs(at(turned, a + asIs.azimuths / 4, n - 1 - j, i) - at(asIs, a, i, j)));
  errors.sort((x, y) => x - y);
  // The lines fall elsewhere between the stations.
  expect(errors[Math.floor(errors.length * 0.99)]).toBeLessThan(0.002);
  expect(errors[errors.length - 1]).toBeLessThan(0.02);
});

test('cells are marked where the land stands above the direction, between stations and azimuths too', () => {
  const rise = Math.tan(10 / DEG);
  const land = gridOf(300, 300, 4, (x, y) => rise * Math.max(0, y) * (1 + x / 1e6));
  const field = swept(land);
  const grid = { columns: 20, rows: 10, cellM: 1, westM: -10, northM: 15 };
  // A tile that takes every second row, with room to spare in each.
  const tile = {
    ...grid,
    stride: 24,
    rowM: 2,
    readingZM: new Float64Array(0),
    lowestM: 0,
    highestM: 0,
  } as unknown as Parameters<typeof markBehindLand>[0];
  const behind = new Uint8Array(24 * 10).fill(7);
  expect(markBehindLand(tile, field, 0, Math.tan(11 / DEG), behind)).toBe(false);
  expect(behind.every((mark) => mark === 7)).toBe(true);
  expect(markBehindLand(tile, field, 2 * Math.PI - 0.01, Math.tan(9 / DEG), behind)).toBe(true);
  for (let r = 0; r < 10; r++) for (let c = 0; c < 24; c++) expect(behind[r * 24 + c]).toBe(c < 20 ? 1 : 7);
  // South of the foot of the slope, farther off, the same land stands lower.
  const south = { ...tile, northM: -5 };
  const altitude = 9;
  markBehindLand(south, field, 0, Math.tan(altitude / DEG), behind);
  const edgeZ = rise * 598;
  for (let r = 0; r < 7; r++) {
    const y = -5 - (r + 0.5) * 2;
    const seenDeg = Math.atan(edgeZ / (598 - y)) * DEG;
    if (Math.abs(seenDeg - altitude) > 0.02) expect(behind[r * 24 + 5]).toBe(seenDeg > altitude ? 1 : 0);
  }
});
