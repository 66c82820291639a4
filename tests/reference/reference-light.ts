/**
 * The plain slow light: one cell, every ten minutes of the year, every crown and every piece, no table, no tiling.
 * Crowns are walked through in 4 cm steps, pieces are cut edge by edge, the land is walked along in half-metre to
 * half-cell steps, the sky is 4,050 patches of equal steps in altitude and azimuth, leaves have the state of their day.
 */
import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_FORMS,
  CROWN_GROUND,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
} from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { sampleGrid } from '../../src/numeric/grid.ts';
import { marchedCanopyM } from './plain-horizon.ts';
import type { PlainYear } from './reference-sun.ts';

const STEP_M = 0.04;
/** In plan, over a canopy of columns metres wide. */
const CANOPY_STEP_M = 0.2;

export interface CellLight {
  readonly directHours: Float64Array;
  readonly openHours: Float64Array;
  /** 12 months, then the growing season. */
  readonly lightShare: Float64Array;
  readonly dailyLightIntegral: Float64Array;
}

type Vec = readonly [number, number, number];

function towards(altitudeRad: number, azimuthRad: number, convergenceRad: number): Vec {
  const a = azimuthRad - convergenceRad;
  return [Math.sin(a) * Math.cos(altitudeRad), Math.cos(a) * Math.cos(altitudeRad), Math.sin(altitudeRad)];
}

/** Path through crown i of a ray from o along u, by walking. */
function walkCrownM(scene: LightScene, i: number, o: Vec, u: Vec): number {
  const at = (k: number) => scene.crowns.values[i * CROWN_STRIDE + k];
  const radius = at(CROWN_RADIUS);
  const base = at(CROWN_GROUND) + at(CROWN_BASE);
  const top = at(CROWN_GROUND) + at(CROWN_TOP);
  const dx = o[0] - at(CROWN_X);
  const dy = o[1] - at(CROWN_Y);
  // Walk only where the ray is within the crown's heights and its upright cylinder.
  let from = Math.max(0, (base - o[2]) / u[2]);
  let to = (top - o[2]) / u[2];
  const flat = Math.hypot(u[0], u[1]);
  const closest = -(dx * u[0] + dy * u[1]) / (flat * flat);
  const miss = Math.hypot(dx + closest * u[0], dy + closest * u[1]);
  if (miss >= radius) return 0;
  const halfChord = Math.sqrt(radius * radius - miss * miss) / flat;
  from = Math.max(from, closest - halfChord);
  to = Math.min(to, closest + halfChord);
  if (to <= from) return 0;
  const form = CROWN_FORMS[scene.crowns.form[i]];
  const steps = Math.ceil((to - from) / STEP_M);
  const step = (to - from) / steps;
  let inside = 0;
  for (let s = 0; s < steps; s++) {
    const t = from + (s + 0.5) * step;
    const r = Math.hypot(dx + t * u[0], dy + t * u[1]) / radius;
    const h = (o[2] + t * u[2] - base) / (top - base);
    let within = r <= 1;
    if (form === 'ellipsoid') within = r * r + (2 * h - 1) ** 2 <= 1;
    if (form === 'dome') within = r * r + h * h <= 1;
    if (form === 'cone') within = r <= 1 - h;
    if (within) inside++;
  }
  return inside * step;
}

/** Path through prism p: the crossings with its outline in plan, then the heights. */
export function cutPrismM(scene: LightScene, p: number, o: Vec, u: Vec): number {
  const { ringXY, ringStart, values } = scene.prisms;
  const first = ringStart[p];
  const count = ringStart[p + 1] - first;
  const crossings: number[] = [];
  let windings = 0;
  for (let k = 0; k < count; k++) {
    const ax = ringXY[2 * (first + k)] - o[0];
    const ay = ringXY[2 * (first + k) + 1] - o[1];
    const j = first + ((k + 1) % count);
    const bx = ringXY[2 * j] - o[0];
    const by = ringXY[2 * j + 1] - o[1];
    if (ay > 0 !== by > 0 && ax + ((bx - ax) * -ay) / (by - ay) > 0) windings++;
    // Side of each corner of the ray's line in plan.
    const sa = u[0] * ay - u[1] * ax;
    const sb = u[0] * by - u[1] * bx;
    if (sa > 0 === sb > 0) continue;
    const f = sa / (sa - sb);
    const flat2 = u[0] * u[0] + u[1] * u[1];
    crossings.push(((ax + f * (bx - ax)) * u[0] + (ay + f * (by - ay)) * u[1]) / flat2);
  }
  const ahead = crossings.filter((t) => t > 0).sort((a, b) => a - b);
  if (windings % 2 === 1) ahead.unshift(0);
  if (ahead.length < 2) return 0;
  const v = p * PRISM_STRIDE;
  const heightOver = (t: number) =>
    o[2] + t * u[2] - (values[v] + values[v + 1] * (o[0] + t * u[0]) + values[v + 2] * (o[1] + t * u[1]));
  const h0 = heightOver(ahead[0]);
  const h1 = heightOver(ahead[1]);
  const base = values[v + 3];
  const top = values[v + 4];
  if (h0 === h1) return h0 >= base && h0 <= top ? ahead[1] - ahead[0] : 0;
  const share = (h: number) => Math.min(1, Math.max(0, (h - h0) / (h1 - h0)));
  return Math.abs(share(top) - share(base)) * (ahead[1] - ahead[0]);
}

/** Whether the land rises above the ray: steps of half a ground cell to the edge of the land. */
function behindLand(scene: LightScene, o: Vec, u: Vec, highestM: number): boolean {
  const { ground } = scene;
  const flat = Math.hypot(u[0], u[1]);
  const sx = u[0] / flat;
  const sy = u[1] / flat;
  const half = ground.cellM / 2;
  for (let d = half / 2; ; d += half) {
    const x = o[0] + d * sx;
    const y = o[1] + d * sy;
    const z = o[2] + (d / flat) * u[2];
    // Beyond the outermost cell centres nothing is known, and nothing rises.
    if (z > highestM || x < ground.westM + half || x > ground.westM + ground.columns * ground.cellM - half)
      return false;
    if (y > ground.northM - half || y < ground.northM - ground.rows * ground.cellM + half) return false;
    if (sampleGrid(ground, x, y) > z) return true;
  }
}

/** Depth by leaf class, in leaf and leafless, of everything along a ray; null where it is blocked. */
function depthsAlong(scene: LightScene, o: Vec, u: Vec, depths: Float64Array): boolean {
  depths.fill(0);
  const { crowns, prisms } = scene;
  for (let i = 0; i < crowns.count; i++) {
    const path = walkCrownM(scene, i, o, u);
    if (path === 0) continue;
    const k = 2 * crowns.leafClass[i];
    depths[k] += path * crowns.values[i * CROWN_STRIDE + CROWN_DEPTH_ON];
    depths[k + 1] += path * crowns.values[i * CROWN_STRIDE + CROWN_DEPTH_OFF];
  }
  for (let p = 0; p < prisms.count; p++) {
    const path = cutPrismM(scene, p, o, u);
    if (path === 0) continue;
    if (prisms.solid[p]) return false;
    const k = 2 * prisms.leafClass[p];
    depths[k] += path * prisms.values[p * PRISM_STRIDE + 5];
    depths[k + 1] += path * prisms.values[p * PRISM_STRIDE + 6];
  }
  const { surroundings } = scene;
  if (surroundings) {
    const { canopy, leafClass, depthOnPerM, depthOffPerM } = surroundings;
    const flat = Math.hypot(u[0], u[1]);
    const [x, y, z] = o;
    const path = marchedCanopyM(
      canopy,
      scene.ground,
      x,
      y,
      z,
      Math.atan2(u[0], u[1]),
      u[2] / flat,
      CANOPY_STEP_M / flat,
    );
    depths[2 * leafClass] += path * depthOnPerM;
    depths[2 * leafClass + 1] += path * depthOffPerM;
  }
  return true;
}

export function referenceCell(
  scene: LightScene,
  year: PlainYear,
  xM: number,
  yM: number,
  readingHeightM: number,
): CellLight {
  const { leaf } = scene;
  const o: Vec = [xM, yM, sampleGrid(scene.ground, xM, yM) + readingHeightM];
  let highestM = Number.NEGATIVE_INFINITY;
  for (const z of scene.ground.values) highestM = Math.max(highestM, z);
  const depths = new Float64Array(2 * leaf.classCount);
  const through = (phase: number) => {
    let depth = 0;
    for (let c = 0; c < leaf.classCount; c++) {
      const share = leaf.leafShare[phase * leaf.classCount + c];
      depth += share * depths[2 * c] + (1 - share) * depths[2 * c + 1];
    }
    return Math.exp(-depth);
  };

  // The sky, once for each state of the leaves.
  const skyShare = new Float64Array(leaf.phaseCount);
  let skyTotal = 0;
  for (let a = 0; a < 45; a++)
    for (let b = 0; b < 90; b++) {
      const alt = ((a + 0.5) * 2 * Math.PI) / 180;
      // Rows are turned against each other so that a wall does not meet all of them alike.
      const az = ((b + ((a * 0.618) % 1)) * 4 * Math.PI) / 180;
      const bright = scene.sky.diffuseSky === 'isotropic' ? 1 : (1 + 2 * Math.sin(alt)) / 3;
      const weight = bright * Math.sin(alt) * Math.cos(alt);
      skyTotal += weight;
      const u = towards(alt, az, 0);
      if (behindLand(scene, o, u, highestM) || !depthsAlong(scene, o, u, depths)) continue;
      for (let phase = 0; phase < leaf.phaseCount; phase++) skyShare[phase] += weight * through(phase);
    }

  const directHours = new Float64Array(12);
  const openHours = new Float64Array(12);
  const got = new Float64Array(13);
  const open = new Float64Array(13);
  const daysInMonth = new Float64Array(12);
  year.diffuseMolByDay.forEach((mol, d) => {
    const periods = scene.growingDay[d] ? [year.monthOfDay[d], 12] : [year.monthOfDay[d]];
    daysInMonth[year.monthOfDay[d]]++;
    for (const period of periods) {
      open[period] += mol;
      got[period] += (mol * skyShare[leaf.phaseOfDay[d]]) / skyTotal;
    }
  });
  for (const m of year.moments) {
    open[m.month] += m.beamMol;
    if (m.growing) open[12] += m.beamMol;
    const u = towards(m.altitudeRad, m.azimuthRad, scene.convergenceRad);
    if (behindLand(scene, o, u, highestM)) continue;
    openHours[m.month] += m.hours;
    if (!depthsAlong(scene, o, u, depths)) continue;
    const t = through(leaf.phaseOfDay[m.day]);
    directHours[m.month] += t * m.hours;
    got[m.month] += t * m.beamMol;
    if (m.growing) got[12] += t * m.beamMol;
  }
  return {
    directHours,
    openHours,
    lightShare: got.map((g, k) => g / open[k]),
    dailyLightIntegral: got.slice(0, 12).map((g, k) => g / daysInMonth[k]),
  };
}
