import type { LonLat } from '../geo/frame.ts';
import { degToRad } from '../units/angle.ts';
import { groundPlane, type PlaneM } from './ground-plane.ts';
import { scaleThatFits } from './map-scale.ts';
import type { BoxMm, PointMm } from './page-model.ts';
import type { PlanPageInput } from './plan-input.ts';

/** Where the ground lies on the paper. */
export interface MapPlacement {
  readonly boxMm: BoxMm;
  /** 1 : scale. */
  readonly scale: number;
  /** True azimuth that points up the page. */
  readonly upAzimuthDeg: number;
  readonly onPaper: (lonLat: LonLat) => PointMm;
  /** Metres on the ground to millimetres on paper. */
  readonly paperMm: (groundM: number) => number;
  /** Whether all that should be on the page is. */
  readonly holdsAll: boolean;
}

/** Room left between the ground and the frame when the scale is chosen to fit. */
const RIM_MM = 5;

function everything(input: PlanPageInput): LonLat[] {
  if (input.extent && input.extent.length > 0) return [...input.extent];
  const fields = input.fields.flatMap((field) => field.rings.flat());
  if (fields.length > 0) return fields;
  const outlined = [input.belts, input.blocks, input.buildings, input.walls, input.patches].flat();
  return [
    ...outlined.flatMap((thing) => thing.rings.flat()),
    ...input.trees.map((tree) => tree.lonLat),
    ...[...input.paths, ...input.keepOuts].flatMap((thing) => thing.line),
  ];
}

/** Lays the ground in the frame: its middle in the middle, at the asked scale or the largest at which it fits. */
export function placeMap(input: PlanPageInput, boxMm: BoxMm): MapPlacement {
  const upAzimuthDeg = input.upAzimuthDeg ?? 0;
  const cos = Math.cos(degToRad(upAzimuthDeg));
  const sin = Math.sin(degToRad(upAzimuthDeg));
  const upright = ([east, north]: PlaneM): PlaneM => [east * cos - north * sin, east * sin + north * cos];

  const points = everything(input);
  const first: LonLat = points[0] ?? input.frame.centreLonLat;
  const plane = groundPlane(first);
  const box = boundsOf(points.length > 0 ? points.map((point) => upright(plane(point))) : [[0, 0]]);
  const middle = [(box.left + box.right) / 2, (box.bottom + box.top) / 2];

  const ground = { widthM: Math.max(box.right - box.left, 10), heightM: Math.max(box.top - box.bottom, 10) };
  const room = { widthMm: boxMm.widthMm - 2 * RIM_MM, heightMm: boxMm.heightMm - 2 * RIM_MM };
  const fitting = scaleThatFits(ground, room);
  const scale = input.scale === 'fit' ? fitting : input.scale;
  const mmPerM = 1000 / scale;
  return {
    boxMm,
    scale,
    upAzimuthDeg,
    onPaper: (lonLat) => {
      const [right, up] = upright(plane(lonLat));
      return [
        boxMm.xMm + boxMm.widthMm / 2 + (right - middle[0]) * mmPerM,
        boxMm.yMm + boxMm.heightMm / 2 - (up - middle[1]) * mmPerM,
      ];
    },
    paperMm: (groundM) => groundM * mmPerM,
    holdsAll: ground.widthM * mmPerM <= boxMm.widthMm && ground.heightM * mmPerM <= boxMm.heightMm,
  };
}

function boundsOf(points: readonly PlaneM[]) {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
}
