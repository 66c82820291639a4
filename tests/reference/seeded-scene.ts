/** Random small worlds for comparing the engine with the plain reference: everything the engine can meet, in 40 m. */
import { CROWN_FORMS, CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import type { LightRequest, LightScene } from '../../src/light/light-types.ts';
import { type Grid, sampleGrid } from '../../src/numeric/grid.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { ridgeM, woodsAround } from './seeded-land.ts';

const PLACES: readonly [latDeg: number, lonDeg: number, timeZone: string][] = [
  [45.1, -64.5, 'America/Halifax'],
  [-43.6, 171.9, 'Pacific/Auckland'],
  [52.3, 1.2, 'Europe/London'],
  [-36.9, -72.1, 'America/Santiago'],
  [59.8, 10.7, 'Europe/Oslo'],
  [38.2, -122.6, 'America/Los_Angeles'],
  [-41.2, 146.4, 'Australia/Hobart'],
  [47.4, 8.6, 'Europe/Zurich'],
  [-33.4, 19.3, 'Africa/Johannesburg'],
  [56.1, 92.8, 'Asia/Krasnoyarsk'],
];
/** Every place twice: with many crowns, and with few but land that hides the sun or woods around. */
export const SCENE_SEEDS = Array.from({ length: 2 * PLACES.length }, (_, i) => i + 1);
const FEW_CROWNS = 6;

interface Piece {
  ring: number[];
  base: number;
  top: number;
  depthOn: number;
  depthOff: number;
  solid: boolean;
  leafClass: number;
  thing: number;
}

export function seededScene(seed: number, crownCount?: number): LightRequest {
  const random = seededRandom(seed * 7919);
  const between = (low: number, high: number) => low + random() * (high - low);
  const [latDeg, lonDeg, timeZone] = PLACES[(seed - 1) % PLACES.length];
  const calendarYear = 2026 + (seed % 4);
  const days = (Date.UTC(calendarYear + 1, 0, 1) - Date.UTC(calendarYear, 0, 1)) / 86_400_000;
  const sizeM = 40;

  const groundCellM = seed % 3 === 0 ? 10 : seed > PLACES.length ? 4 : 2;
  const edge = Math.round(240 / groundCellM);
  const fall = between(-0.15, 0.15);
  const tilt = between(-0.15, 0.15);
  const swell = between(0, 4);
  const ground: Grid = {
    columns: edge,
    rows: edge,
    cellM: groundCellM,
    westM: -100,
    northM: 140,
    values: new Float32Array(edge * edge),
  };
  for (let r = 0; r < edge; r++)
    for (let c = 0; c < edge; c++) {
      const x = ground.westM + (c + 0.5) * groundCellM;
      const y = ground.northM - (r + 0.5) * groundCellM;
      const waves = swell * (Math.sin(x / 23) + Math.cos(y / 31));
      ground.values[r * edge + c] = 120 + fall * x + tilt * y + waves + ridgeM(seed, latDeg, x, y);
    }

  const crowns = crownCount ?? (seed > PLACES.length ? FEW_CROWNS : 12 + Math.floor(random() * 20));
  const values = new Float64Array(crowns * CROWN_STRIDE);
  const form = new Uint8Array(crowns);
  const leafClass = new Uint8Array(crowns);
  const thing = new Uint16Array(crowns);
  for (let i = 0; i < crowns; i++) {
    const x = between(-5, sizeM + 5);
    const y = between(-5, sizeM + 5);
    const top = between(3, 16);
    const on = between(0.15, 0.6);
    const evergreen = random() < 0.25;
    values.set(
      [
        x,
        y,
        sampleGrid(ground, x, y),
        between(0.1, 0.45) * top,
        top,
        between(0.12, 0.3) * top,
        on,
        evergreen ? on : 0.35 * on,
      ],
      i * CROWN_STRIDE,
    );
    form[i] = i % CROWN_FORMS.length;
    leafClass[i] = evergreen ? 0 : 1 + (i % 2);
    thing[i] = i;
  }

  const pieces: Piece[] = [];
  let nextThing = crowns;
  /** A straight run of upright pieces of a width, along an azimuth. */
  const run = (x: number, y: number, az: number, lengthM: number, widthM: number, piece: Partial<Piece>) => {
    const step = piece.solid ? lengthM : 8;
    const ax = Math.sin(az);
    const ay = Math.cos(az);
    for (let s = 0; s < lengthM; s += step) {
      const e = Math.min(lengthM, s + step);
      const corner = (along: number, across: number) => [
        x + along * ax + across * ay,
        y + along * ay - across * ax,
      ];
      const w = widthM / 2;
      pieces.push({
        ring: [...corner(s, w), ...corner(e, w), ...corner(e, -w), ...corner(s, -w)],
        base: 0,
        top: 3,
        depthOn: 0,
        depthOff: 0,
        solid: false,
        leafClass: 0,
        thing: nextThing,
        ...piece,
      });
    }
    nextThing++;
  };
  const beltDepth = -Math.log(0.35) / 3;
  run(-3, -10, between(-0.2, 0.2), 60, 3, {
    top: between(6, 12),
    base: 0.5,
    depthOn: beltDepth,
    depthOff: beltDepth,
  });
  run(-10, sizeM + 4, Math.PI / 2 + between(-0.2, 0.2), 60, 3, {
    top: between(4, 9),
    depthOn: beltDepth,
    depthOff: 0.35 * beltDepth,
    leafClass: 1,
  });
  run(between(5, 30), between(5, 30), between(0, Math.PI), 12, 0.3, { top: 2, base: -5, solid: true });
  run(between(5, 30), between(5, 30), between(0, Math.PI), 7, 5, {
    top: between(2.5, 6),
    base: -5,
    solid: true,
  });

  const ringStart = [0];
  const ringXY: number[] = [];
  const prismValues = new Float64Array(pieces.length * PRISM_STRIDE);
  pieces.forEach((piece, p) => {
    ringXY.push(...piece.ring);
    ringStart.push(ringXY.length / 2);
    const cx = (piece.ring[0] + piece.ring[4]) / 2;
    const cy = (piece.ring[1] + piece.ring[5]) / 2;
    const gx = (sampleGrid(ground, cx + 2, cy) - sampleGrid(ground, cx - 2, cy)) / 4;
    const gy = (sampleGrid(ground, cx, cy + 2) - sampleGrid(ground, cx, cy - 2)) / 4;
    prismValues.set(
      [
        sampleGrid(ground, cx, cy) - gx * cx - gy * cy,
        gx,
        gy,
        piece.base,
        piece.top,
        piece.depthOn,
        piece.depthOff,
      ],
      p * PRISM_STRIDE,
    );
  });

  const south = latDeg < 0;
  const leafOn = (day: number, flush: number) => {
    const d = (day + (south ? 182 : 0)) % days;
    return Math.max(0, Math.min(1, (d - flush) / 28, (flush + 205 - d) / 28));
  };
  const phaseOf = new Map<string, number>();
  const leafShare: number[] = [];
  const phaseOfDay = Uint8Array.from({ length: days }, (_, day) => {
    const state = [1, leafOn(day, 98), leafOn(day, 119)];
    const key = state.join();
    const known = phaseOf.get(key);
    if (known !== undefined) return known;
    leafShare.push(...state);
    phaseOf.set(key, phaseOf.size);
    return phaseOf.size - 1;
  });
  const growingDay = Uint8Array.from({ length: days }, (_, d) =>
    south ? Number(d < 90 || d >= 273) : Number(d >= 95 && d < 273),
  );

  const scene: LightScene = {
    latDeg,
    lonDeg,
    convergenceRad: between(-0.04, 0.04),
    calendarYear,
    timeZone,
    growingDay,
    sky: {
      sunshineShareByMonth: Float32Array.from({ length: 12 }, () => between(0.25, 0.65)),
      hourly: seed % 5 === 0 ? seededHours(seed, calendarYear, latDeg, lonDeg) : null,
      diffuseSky: seed % 4 === 0 ? 'cie-overcast' : 'isotropic',
    },
    ground,
    crowns: { count: crowns, values, form, leafClass, thing },
    prisms: {
      count: pieces.length,
      ringStart: Uint32Array.from(ringStart),
      ringXY: Float64Array.from(ringXY),
      values: prismValues,
      solid: Uint8Array.from(pieces, (p) => Number(p.solid)),
      leafClass: Uint8Array.from(pieces, (p) => p.leafClass),
      thing: Uint16Array.from(pieces, (p) => p.thing),
    },
    leaf: {
      classCount: 3,
      phaseCount: phaseOf.size,
      phaseOfDay,
      leafShare: Float32Array.from(leafShare),
    },
    surroundings: woodsAround(seed),
  };
  return {
    scene,
    grid: { columns: sizeM, rows: sizeM, cellM: 1, westM: 0, northM: sizeM },
    readingHeightM: seed % 2 === 0 ? 0.1 : 0.8,
  };
}

/** Made-up weather: hours of broken cloud, brightest about local noon. */
function seededHours(
  seed: number,
  year: number,
  latDeg: number,
  lonDeg: number,
): LightScene['sky']['hourly'] {
  const random = seededRandom(seed);
  const start = Date.UTC(year, 0, 1);
  const hours = Math.round((Date.UTC(year + 1, 0, 1) - start) / 3_600_000);
  const offsetMs = Math.round(lonDeg / 15) * 3_600_000;
  const midHourMs = Float64Array.from({ length: hours }, (_, h) => start - offsetMs + (h + 0.5) * 3_600_000);
  const globalWm2 = new Float32Array(hours);
  const diffuseWm2 = new Float32Array(hours);
  for (let h = 0; h < hours; h++) {
    const season = Math.cos((2 * Math.PI * (h / 24 - (latDeg > 0 ? 172 : 355))) / 365);
    const height = Math.max(0, Math.sin((Math.PI * ((h % 24) - 6 + 2 * season)) / (12 + 4 * season)));
    const inDay = Math.abs((h % 24) + 0.5 - 12) < 6 + 2 * season;
    const global = inDay ? (450 + 350 * season) * height * (0.3 + 0.7 * random()) : 0;
    globalWm2[h] = global;
    diffuseWm2[h] = global * (0.25 + 0.7 * random());
  }
  return { midHourMs, globalWm2, diffuseWm2 };
}
