/**
 * A quick model of the light of some patches, to choose between many cuts: from every cell some hundreds of rays to the
 * sun and sky of the growing season, each dimmed by exp(-sum of optical depths). Depths of different plants add, so a
 * cut multiplies the light of the rays that crossed the plant by what it sets free, whatever else is cut. What is there
 * with nothing cut is the light engine's own figure: only the gains are the model's. Leaves are taken in their mean
 * state by direction; the woods of a surface raster stand in no ray's way here. The light engine has the last word.
 */
import { CROWN_FORMS, CROWN_STRIDE } from '../crowns/crown-set.ts';
import { crownPathM } from '../crowns/path-length.ts';
import { prismPathM } from '../crowns/prism-path.ts';
import { PRISM_DEPTH_OFF, PRISM_DEPTH_ON, PRISM_STRIDE } from '../crowns/prism-set.ts';
import { groundPyramid, horizonTangent } from '../light/horizon.ts';
import { type Fineness, lightPlan } from '../light/light-plan.ts';
import type { LightScene } from '../light/light-types.ts';
import { cellCentreX, cellCentreY, sampleGrid } from '../numeric/grid.ts';
import type { Steps } from '../numeric/steps.ts';
import type { PatchMask } from '../scene/patch-masks.ts';
import type { CutScene } from './cut-scenes.ts';

export type CutPatch = Pick<PatchMask, 'grid' | 'mask' | 'readingHeightM' | 'shareToKeep' | 'areaShare'>;

/** A direction that light of the growing season comes from. */
interface Ray {
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
  readonly sx: number;
  readonly sy: number;
  readonly tanAltitude: number;
  /** Share of the season's photons on open level ground. */
  readonly share: number;
  /** Mean leaf share of each leaf class. */
  readonly leafShare: Float64Array;
}

/** What one option sets free: by ray (`slots`, rising) the factor on its light; rays of one spot lie together. */
export interface OptionGain {
  readonly plant: number;
  readonly slots: Int32Array;
  readonly factors: Float64Array;
  /** Spots that it touches, and where each one's rays end among `slots`. */
  readonly spots: Int32Array;
  readonly ends: Int32Array;
}

/** One patch in one season: so many of its spots (`first` to `end`) must keep so much light. */
export interface LightWanted {
  readonly patch: number;
  readonly season: number;
  readonly first: number;
  readonly end: number;
  readonly shareToKeep: number;
  readonly spotsNeeded: number;
}

export interface CutModel {
  /** Light along each ray with nothing cut, share of the season's open light. */
  readonly slotLight: Float64Array;
  /** Light of each spot (one cell in one season) with nothing cut, by the light engine. */
  readonly light: Float64Array;
  /** By spot: the cell of its patch's grid. */
  readonly cellOf: Int32Array;
  readonly wanted: readonly LightWanted[];
  /** By plant and option. */
  readonly gains: readonly (readonly OptionGain[])[];
}

/** Some 170 directions of the growing season's sun and 240 of the sky. */
const MODEL_FINENESS: Fineness = { sun: { declinationLevels: 10, minutes: 30 }, skyDirections: 240 };
/** Spots of a patch in one season at most. */
const MOST_SPOTS = 120;
/** The land is looked up in so many azimuths. */
const HORIZON_AZIMUTHS = 36;
/** A ray that so little comes along, or a factor so near 1, is left out. */
const LEAST_LIGHT = 1e-7;
const LEAST_GAIN = 1e-4;
const PAUSE_MS = 20;

function seasonRays(scene: LightScene): Ray[] {
  const plan = lightPlan(scene, MODEL_FINENESS);
  const openMol = plan.openMol[12];
  return [...plan.sun, ...plan.sky].flatMap(({ ray, states, leafShare, growingMol }): Ray[] => {
    const mol = growingMol.reduce((sum, one) => sum + one, 0);
    if (!(mol > 0)) return [];
    const mean = new Float64Array(plan.classCount);
    for (let state = 0; state < states; state++)
      for (let leafClass = 0; leafClass < plan.classCount; leafClass++)
        mean[leafClass] += (growingMol[state] / mol) * leafShare[state * plan.classCount + leafClass];
    const { ux, uy, uz, sx, sy, tanAltitude } = ray;
    return [{ ux, uy, uz, sx, sy, tanAltitude, share: mol / openMol, leafShare: mean }];
  });
}

/** A body of foliage, or a solid, with a circle around it. */
interface Piece {
  readonly xM: number;
  readonly yM: number;
  readonly reachM: number;
  readonly depthOn: number;
  readonly depthOff: number;
  readonly leafClass: number;
  readonly pathM: (ox: number, oy: number, oz: number, ray: Ray) => number;
}

/** The pieces of each thing. */
function piecesByThing({ scene: { crowns, prisms }, plantOf }: CutScene): Piece[][] {
  const things = Array.from(plantOf, (): Piece[] => []);
  for (let i = 0; i < crowns.count; i++) {
    const [xM, yM, groundM, baseM, topM, radiusM, depthOn, depthOff] = crowns.values.subarray(
      i * CROWN_STRIDE,
      (i + 1) * CROWN_STRIDE,
    );
    const form = CROWN_FORMS[crowns.form[i]];
    things[crowns.thing[i]].push({
      xM,
      yM,
      reachM: radiusM,
      depthOn,
      depthOff,
      leafClass: crowns.leafClass[i],
      pathM: (ox, oy, oz, { ux, uy, uz }) =>
        crownPathM(form, ox - xM, oy - yM, oz - groundM, ux, uy, uz, baseM, topM, radiusM),
    });
  }
  for (let i = 0; i < prisms.count; i++) {
    const ring = prisms.ringXY.subarray(2 * prisms.ringStart[i], 2 * prisms.ringStart[i + 1]);
    const corners = ring.length / 2;
    let [xM, yM, reachM] = [0, 0, 0];
    for (let v = 0; v < ring.length; v += 2) [xM, yM] = [xM + ring[v] / corners, yM + ring[v + 1] / corners];
    for (let v = 0; v < ring.length; v += 2)
      reachM = Math.max(reachM, Math.hypot(ring[v] - xM, ring[v + 1] - yM));
    const solid = prisms.solid[i] === 1;
    const [on, off] = [PRISM_DEPTH_ON, PRISM_DEPTH_OFF].map((at) => prisms.values[i * PRISM_STRIDE + at]);
    things[prisms.thing[i]].push({
      xM,
      yM,
      reachM,
      depthOn: solid ? Number.POSITIVE_INFINITY : on,
      depthOff: solid ? Number.POSITIVE_INFINITY : off,
      leafClass: prisms.leafClass[i],
      pathM: (ox, oy, oz, { ux, uy, uz }) => prismPathM(prisms, i, ox, oy, oz, ux, uy, uz),
    });
  }
  return things;
}

/** Hot: adds the optical depth of some pieces to each ray from a point. @returns whether any ray is touched */
function addDepths(
  pieces: readonly Piece[],
  rays: readonly Ray[],
  x: number,
  y: number,
  z: number,
  depths: Float64Array,
): boolean {
  let any = false;
  for (const { xM, yM, reachM, depthOn, depthOff, leafClass, pathM } of pieces) {
    const toX = xM - x;
    const toY = yM - y;
    for (let r = 0; r < rays.length; r++) {
      const ray = rays[r];
      const across = toX * ray.sy - toY * ray.sx;
      if (across > reachM || across < -reachM || toX * ray.sx + toY * ray.sy < -reachM) continue;
      const path = pathM(x, y, z, ray);
      if (!(path > 0)) continue;
      const share = ray.leafShare[leafClass];
      depths[r] += depthOn === depthOff ? depthOn * path : (share * depthOn + (1 - share) * depthOff) * path;
      any = true;
    }
  }
  return any;
}

/** Gathers what an option sets free while the spots are gone through in their order. */
class GainList {
  private readonly slots: number[] = [];
  private readonly factors: number[] = [];
  private readonly spots: number[] = [];
  private readonly ends: number[] = [];

  add(spot: number, slot: number, factor: number): void {
    if (this.spots[this.spots.length - 1] !== spot) {
      this.spots.push(spot);
      this.ends.push(0);
    }
    this.slots.push(slot);
    this.factors.push(factor);
    this.ends[this.ends.length - 1] = this.slots.length;
  }

  done(plant: number): OptionGain {
    return {
      plant,
      slots: Int32Array.from(this.slots),
      factors: Float64Array.from(this.factors),
      spots: Int32Array.from(this.spots),
      ends: Int32Array.from(this.ends),
    };
  }
}

/** Cells of a patch that count, for light is known there; a wide patch's are thinned out evenly. */
function countedCells({ mask }: CutPatch, light: Float32Array): number[] {
  const cells = Array.from(mask.keys()).filter((cell) => mask[cell] === 1 && !Number.isNaN(light[cell]));
  const stride = Math.max(1, cells.length / MOST_SPOTS);
  return Array.from({ length: Math.round(cells.length / stride) }, (_, k) => cells[Math.floor(k * stride)]);
}

/**
 * @param seasons which of the scenes are looked at
 * @param optionCounts options of each plant
 * @param lightNow season's share of open light with nothing cut, by season and patch: one value a cell of its grid
 */
export function* cutModel(
  scenes: readonly CutScene[],
  seasons: readonly number[],
  patches: readonly CutPatch[],
  optionCounts: readonly number[],
  lightNow: readonly (readonly Float32Array[])[],
): Steps<CutModel> {
  const lists = optionCounts.map((count) => Array.from({ length: count }, () => new GainList()));
  const slotLight: number[] = [];
  const light: number[] = [];
  const cellOf: number[] = [];
  const wanted: LightWanted[] = [];
  const pyramid = groundPyramid(scenes[0].scene.ground);
  let pausedAt = performance.now();
  for (const [looked, season] of seasons.entries()) {
    const cutScene = scenes[season];
    const { scene, plantOf, optionOf } = cutScene;
    const rays = seasonRays(scene);
    const pieces = piecesByThing(cutScene);
    const fixed = pieces.filter((_, thing) => plantOf[thing] < 0).flat();
    const states = optionCounts.map((count, plant) =>
      Array.from({ length: count + 1 }, (_, o) =>
        pieces.filter((_, thing) => plantOf[thing] === plant && optionOf[thing] === o - 1).flat(),
      ),
    );
    const depths = new Float64Array(rays.length);
    const stateDepths = optionCounts.map((count) =>
      Array.from({ length: count + 1 }, () => new Float64Array(rays.length)),
    );
    for (const [p, patch] of patches.entries()) {
      const { grid, readingHeightM, shareToKeep, areaShare } = patch;
      const cells = countedCells(patch, lightNow[season][p]);
      const first = light.length;
      for (const cell of cells) {
        const x = cellCentreX(grid, cell % grid.columns);
        const y = cellCentreY(grid, Math.floor(cell / grid.columns));
        const z = sampleGrid(scene.ground, x, y) + readingHeightM;
        const horizon = Float64Array.from({ length: HORIZON_AZIMUTHS }, (_, k) => {
          const azimuth = (2 * Math.PI * k) / HORIZON_AZIMUTHS;
          return horizonTangent(pyramid, x, y, z, Math.sin(azimuth), Math.cos(azimuth));
        });
        depths.fill(0);
        addDepths(fixed, rays, x, y, z, depths);
        const touched = states.map((options, plant) =>
          options.map((state, o) => {
            stateDepths[plant][o].fill(0);
            return addDepths(state, rays, x, y, z, stateDepths[plant][o]);
          }),
        );
        const spot = light.length;
        const firstSlot = slotLight.length;
        for (let r = 0; r < rays.length; r++) {
          let depth = depths[r];
          for (let plant = 0; plant < states.length; plant++)
            if (touched[plant][0]) depth += stateDepths[plant][0][r];
          const hidden = isBehindLand(rays[r], horizon);
          slotLight.push(hidden ? 0 : rays[r].share * Math.exp(-depth));
        }
        touched.forEach((any, plant) => {
          if (!any.includes(true)) return;
          for (let o = 1; o < any.length; o++) {
            const [now, then] = [stateDepths[plant][0], stateDepths[plant][o]];
            for (let r = 0; r < rays.length; r++) {
              if (slotLight[firstSlot + r] < LEAST_LIGHT * Math.exp(-now[r])) continue;
              const factor = Math.exp(now[r] - then[r]);
              if (Math.abs(factor - 1) > LEAST_GAIN) lists[plant][o - 1].add(spot, firstSlot + r, factor);
            }
          }
        });
        light.push(lightNow[season][p][cell]);
        cellOf.push(cell);
        if (performance.now() - pausedAt > PAUSE_MS) {
          yield (looked + (p + (spot - first) / cells.length) / patches.length) / seasons.length;
          pausedAt = performance.now();
        }
      }
      // The smallest count whose share is enough, by the same division as everywhere else.
      let spotsNeeded = Math.floor(areaShare * cells.length);
      while (spotsNeeded / cells.length < areaShare) spotsNeeded++;
      wanted.push({ patch: p, season, first, end: light.length, shareToKeep, spotsNeeded });
    }
  }
  return {
    slotLight: Float64Array.from(slotLight),
    light: Float64Array.from(light),
    cellOf: Int32Array.from(cellOf),
    wanted,
    gains: lists.map((options, plant) => options.map((list) => list.done(plant))),
  };
}

function isBehindLand({ sx, sy, tanAltitude }: Ray, horizon: Float64Array): boolean {
  const turn = Math.atan2(sx, sy) / (2 * Math.PI) + 1;
  const along = (turn % 1) * HORIZON_AZIMUTHS;
  const k = Math.floor(along) % HORIZON_AZIMUTHS;
  const next = horizon[(k + 1) % HORIZON_AZIMUTHS];
  return horizon[k] + (along - Math.floor(along)) * (next - horizon[k]) > tanAltitude;
}
