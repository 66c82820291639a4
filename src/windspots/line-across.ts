import type { LocalXY } from '../geo/frame.ts';
import { alongWind, type WindRay } from '../wind/shelter-tile.ts';
import { lineOf, type SceneOnDay } from './scene-on-day.ts';

/** The line across a belt on its lee side. */
export interface LineAcross {
  /** Metres from the belt's first point to where the line leaves it, and the length of the belt. */
  readonly alongM: number;
  readonly lineM: number;
  /** So many belt heights out along it, local metres. */
  readonly placeAt: (heights: number) => LocalXY;
}

/** The line square to the belt at a place along it; its middle where none is named. */
export function lineAcross(
  { belt, localPerM }: Pick<SceneOnDay, 'belt' | 'localPerM'>,
  ray: WindRay,
  wanted: number | null,
): LineAcross {
  const line = lineOf(belt);
  const legs = line.slice(1).map(([bx, by], i) => {
    const [ax, ay] = line[i];
    return { from: line[i], dx: bx - ax, dy: by - ay, lengthM: Math.hypot(bx - ax, by - ay) / localPerM };
  });
  const lineM = legs.reduce((sum, { lengthM }) => sum + lengthM, 0);
  const alongM = wanted ?? lineM / 2;
  let leg = 0;
  let before = 0;
  while (leg < legs.length - 1 && before + legs[leg].lengthM < alongM) before += legs[leg++].lengthM;
  const { from, dx, dy, lengthM } = legs[leg];
  const share = lengthM === 0 ? 0 : (alongM - before) / lengthM;
  const length = Math.hypot(dx, dy) || 1;
  const [x, y] = [from[0] + share * dx, from[1] + share * dy];
  // Of the two normals the one that the wind blows towards.
  const lee = alongWind(ray, -dy, dx) >= 0 ? 1 : -1;
  const [nx, ny] = [(lee * -dy) / length, (lee * dx) / length];
  const stepM = belt.heightM[0] * localPerM;
  return {
    alongM,
    lineM,
    placeAt: (heights) => [x + nx * heights * stepM, y + ny * heights * stepM],
  };
}
