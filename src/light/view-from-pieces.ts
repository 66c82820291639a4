/**
 * The pieces of a scene as one spot sees them: for a vertical cut through the spot in some azimuth, between which
 * altitudes a crown or prism lies and how near it begins. Every piece is convex, so a cut is one span.
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
} from '../crowns/crown-set.ts';
import { crownPathM } from '../crowns/path-length.ts';
import { prismPathM } from '../crowns/prism-path.ts';
import {
  PRISM_BASE,
  PRISM_DEPTH_OFF,
  PRISM_DEPTH_ON,
  PRISM_GROUND_A,
  PRISM_GROUND_B,
  PRISM_GROUND_C,
  PRISM_STRIDE,
  PRISM_TOP,
} from '../crowns/prism-set.ts';
import type { LightScene } from './light-types.ts';

/** Where the spot's eye is, local frame. */
export interface Eye {
  readonly xM: number;
  readonly yM: number;
  readonly zM: number;
}

/** Altitudes (rad) between which a cut meets a piece, and how far off in plan it begins. */
export interface Span {
  readonly lowRad: number;
  readonly highRad: number;
  readonly fromM: number;
}

export interface SeenPiece {
  readonly thing: number;
  readonly leafClass: number;
  readonly solid: boolean;
  readonly depthOn: number;
  readonly depthOff: number;
  readonly nearestM: number;
  /** Middle of its azimuths and how far it reaches to each side, grid azimuth, rad; pi: all around. */
  readonly azimuthRad: number;
  readonly halfWidthRad: number;
  /** Grid azimuths (rad) at which its outline bends. */
  readonly bendsRad: readonly number[];
  /** The cut in a grid azimuth; null where it misses. */
  span(gridAzimuthRad: number): Span | null;
  /** Path of the ray along a unit direction, m. */
  pathM(ux: number, uy: number, uz: number): number;
}

/** The lowest altitude that is looked at: rays must climb. */
export const LEAST_RAD = 1e-4;
export const ZENITH_RAD = Math.PI / 2;
/** Places along the width of a crown at which its outline is taken, closer together at the edges where it bends. */
const CROWN_BENDS = Array.from({ length: 25 }, (_, k) => Math.cos((k * Math.PI) / 24) * 0.9999);

/** All pieces that reach above the horizontal of the eye. */
export function seenPieces(scene: LightScene, eye: Eye): SeenPiece[] {
  const pieces: SeenPiece[] = [];
  for (let i = 0; i < scene.crowns.count; i++) {
    const crown = seenCrown(scene, i, eye);
    if (crown) pieces.push(crown);
  }
  for (let p = 0; p < scene.prisms.count; p++) {
    const prism = seenPrism(scene, p, eye);
    if (prism) pieces.push(prism);
  }
  return pieces;
}

function seenCrown({ crowns }: LightScene, i: number, eye: Eye): SeenPiece | null {
  const at = (member: number) => crowns.values[i * CROWN_STRIDE + member];
  const form = CROWN_FORMS[crowns.form[i]];
  const radiusM = at(CROWN_RADIUS);
  const baseM = at(CROWN_BASE);
  const topM = at(CROWN_TOP);
  const ox = eye.xM - at(CROWN_X);
  const oy = eye.yM - at(CROWN_Y);
  const oz = eye.zM - at(CROWN_GROUND);
  if (topM <= oz || topM <= baseM || radiusM <= 0) return null;
  const awayM = Math.hypot(ox, oy);
  const azimuthRad = Math.atan2(-ox, -oy);
  const under = awayM <= radiusM;
  const halfWidthRad = under ? Math.PI : Math.asin(radiusM / awayM);
  const pathM = (ux: number, uy: number, uz: number) =>
    crownPathM(form, ox, oy, oz, ux, uy, uz, baseM, topM, radiusM);
  // A cut is widest where the crown is: half-way up an ellipsoid, just above the base of the others.
  const widestM = form === 'ellipsoid' ? (baseM + topM) / 2 : baseM + (topM - baseM) * 1e-3;

  const span = (gridAzimuthRad: number): Span | null => {
    const off = gridAzimuthRad - azimuthRad;
    const aside = awayM * Math.sin(off);
    const ahead = awayM * Math.cos(off);
    if (Math.abs(aside) >= radiusM || (!under && ahead < 0)) return null;
    const sx = Math.sin(gridAzimuthRad);
    const sy = Math.cos(gridAzimuthRad);
    const meets = (altitudeRad: number) => {
      const cos = Math.cos(altitudeRad);
      return pathM(sx * cos, sy * cos, Math.sin(altitudeRad)) > 0;
    };
    const inside = under ? ZENITH_RAD : Math.max(LEAST_RAD, Math.atan2(widestM - oz, ahead));
    if (!meets(inside)) return null;
    const fromM = Math.max(0, ahead - Math.sqrt(radiusM * radiusM - aside * aside));
    return { lowRad: edge(meets, inside, LEAST_RAD), highRad: edge(meets, inside, ZENITH_RAD), fromM };
  };
  return {
    thing: crowns.thing[i],
    leafClass: crowns.leafClass[i],
    solid: false,
    depthOn: at(CROWN_DEPTH_ON),
    depthOff: at(CROWN_DEPTH_OFF),
    nearestM: Math.max(0, awayM - radiusM),
    azimuthRad,
    halfWidthRad,
    bendsRad: under ? [] : CROWN_BENDS.map((share) => azimuthRad + Math.asin((share * radiusM) / awayM)),
    span,
    pathM,
  };
}

/** Where what a cut meets ends, between an altitude that meets it and one further up or down. */
export function edge(meets: (altitudeRad: number) => boolean, insideRad: number, farRad: number): number {
  if (meets(farRad)) return farRad;
  let inside = insideRad;
  let outside = farRad;
  for (let i = 0; i < 26; i++) {
    const middle = (inside + outside) / 2;
    if (meets(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

function seenPrism(scene: LightScene, p: number, eye: Eye): SeenPiece | null {
  const { prisms } = scene;
  const at = (member: number) => prisms.values[p * PRISM_STRIDE + member];
  const first = prisms.ringStart[p];
  const count = prisms.ringStart[p + 1] - first;
  const cornerX = (k: number) => prisms.ringXY[2 * (first + (k % count))] - eye.xM;
  const cornerY = (k: number) => prisms.ringXY[2 * (first + (k % count)) + 1] - eye.yM;
  /** Height of the piece's ground plane over the eye at a place relative to the eye. */
  const planeM = (x: number, y: number) =>
    at(PRISM_GROUND_A) + at(PRISM_GROUND_B) * (eye.xM + x) + at(PRISM_GROUND_C) * (eye.yM + y) - eye.zM;

  let inside = true;
  let nearestM = Number.POSITIVE_INFINITY;
  let middleX = 0;
  let middleY = 0;
  let highest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    const ax = cornerX(k);
    const ay = cornerY(k);
    const ex = cornerX(k + 1) - ax;
    const ey = cornerY(k + 1) - ay;
    if (ex * -ay - ey * -ax < 0) inside = false;
    const along = Math.min(1, Math.max(0, -(ax * ex + ay * ey) / (ex * ex + ey * ey || 1)));
    nearestM = Math.min(nearestM, Math.hypot(ax + along * ex, ay + along * ey));
    middleX += ax / count;
    middleY += ay / count;
    highest = Math.max(highest, planeM(ax, ay) + at(PRISM_TOP));
  }
  if (highest <= 0 || at(PRISM_TOP) <= at(PRISM_BASE)) return null;
  const azimuthRad = Math.atan2(middleX, middleY);
  const bendsRad: number[] = [];
  let halfWidthRad = 0;
  for (let k = 0; k < count; k++) {
    const away = turnBetween(azimuthRad, Math.atan2(cornerX(k), cornerY(k)));
    halfWidthRad = Math.max(halfWidthRad, Math.abs(away));
    bendsRad.push(azimuthRad + away - 1e-7, azimuthRad + away + 1e-7);
  }

  const span = (gridAzimuthRad: number): Span | null => {
    const sx = Math.sin(gridAzimuthRad);
    const sy = Math.cos(gridAzimuthRad);
    let fromM = 0;
    let untilM = Number.POSITIVE_INFINITY;
    for (let k = 0; k < count; k++) {
      const ax = cornerX(k);
      const ay = cornerY(k);
      const nx = cornerY(k + 1) - ay;
      const ny = ax - cornerX(k + 1);
      const outside = -(nx * ax + ny * ay);
      const speed = nx * sx + ny * sy;
      if (speed > 0) untilM = Math.min(untilM, -outside / speed);
      else if (speed < 0) fromM = Math.max(fromM, -outside / speed);
      else if (outside > 0) return null;
    }
    if (!(untilM > fromM)) return null;
    let lowRad = ZENITH_RAD;
    let highRad = -ZENITH_RAD;
    for (const distanceM of [fromM, untilM])
      for (const member of [PRISM_BASE, PRISM_TOP]) {
        const rise = planeM(sx * distanceM, sy * distanceM) + at(member);
        const altitude = distanceM === 0 ? Math.sign(rise) * ZENITH_RAD : Math.atan2(rise, distanceM);
        lowRad = Math.min(lowRad, altitude);
        highRad = Math.max(highRad, altitude);
      }
    if (highRad <= LEAST_RAD) return null;
    return { lowRad: Math.max(LEAST_RAD, lowRad), highRad, fromM };
  };
  return {
    thing: prisms.thing[p],
    leafClass: prisms.leafClass[p],
    solid: prisms.solid[p] === 1,
    depthOn: at(PRISM_DEPTH_ON),
    depthOff: at(PRISM_DEPTH_OFF),
    nearestM: inside ? 0 : nearestM,
    azimuthRad,
    halfWidthRad: inside ? Math.PI : halfWidthRad,
    bendsRad: inside ? [] : bendsRad,
    span,
    pathM: (ux, uy, uz) => prismPathM(prisms, p, eye.xM, eye.yM, eye.zM, ux, uy, uz),
  };
}

/** The turn from one azimuth to another, -pi to pi. */
export const turnBetween = (fromRad: number, toRad: number): number => {
  const turns = (toRad - fromRad) / (2 * Math.PI);
  return (turns - Math.round(turns)) * 2 * Math.PI;
};
