/** A bare world to put single things in. */
import { CROWN_STRIDE } from '../../src/crowns/crown-set.ts';
import { PRISM_STRIDE } from '../../src/crowns/prism-set.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import type { Grid } from '../../src/numeric/grid.ts';

export interface DrawnPiece {
  /** x, y of each corner, counter-clockwise. */
  readonly ring: readonly number[];
  readonly base?: number;
  readonly top: number;
  /** Optical depth a metre; solid without. */
  readonly depthOn?: number;
  readonly depthOff?: number;
  readonly leafClass?: number;
  readonly thing?: number;
}
export interface DrawnCrown {
  readonly x: number;
  readonly y: number;
  readonly base: number;
  readonly top: number;
  readonly radius: number;
  readonly depthOn: number;
  readonly depthOff?: number;
  readonly form?: number;
  readonly leafClass?: number;
  readonly thing?: number;
}

const flatGround = (heightM = 0): Grid => ({
  columns: 2,
  rows: 2,
  cellM: 2000,
  westM: -2000,
  northM: 2000,
  values: new Float32Array(4).fill(heightM),
});

/** Evergreen unless told: class 0 keeps its leaves, class 1 has them on days 120 to 299. */
export function plainScene(
  changes: Partial<Omit<LightScene, 'crowns' | 'prisms'>> & {
    readonly pieces?: readonly DrawnPiece[];
    readonly crowns?: readonly DrawnCrown[];
  } = {},
): LightScene {
  const { pieces = [], crowns = [], ...rest } = changes;
  const ringStart = [0];
  for (const piece of pieces) ringStart.push(ringStart[ringStart.length - 1] + piece.ring.length / 2);
  const prismValues = new Float64Array(pieces.length * PRISM_STRIDE);
  pieces.forEach((piece, p) => {
    const on = piece.depthOn ?? 0;
    prismValues.set([0, 0, 0, piece.base ?? 0, piece.top, on, piece.depthOff ?? on], p * PRISM_STRIDE);
  });
  const crownValues = new Float64Array(crowns.length * CROWN_STRIDE);
  crowns.forEach((crown, i) => {
    crownValues.set(
      [
        crown.x,
        crown.y,
        0,
        crown.base,
        crown.top,
        crown.radius,
        crown.depthOn,
        crown.depthOff ?? crown.depthOn,
      ],
      i * CROWN_STRIDE,
    );
  });
  return {
    latDeg: 45,
    lonDeg: 0,
    convergenceRad: 0,
    calendarYear: 2026,
    timeZone: 'UTC',
    growingDay: Uint8Array.from({ length: 365 }, (_, d) => Number(d >= 90 && d < 273)),
    sky: { sunshineShareByMonth: new Float32Array(12).fill(0.45), hourly: null, diffuseSky: 'isotropic' },
    ground: flatGround(),
    surroundings: null,
    leaf: {
      classCount: 2,
      phaseCount: 2,
      phaseOfDay: Uint8Array.from({ length: 365 }, (_, d) => Number(d >= 120 && d < 300)),
      leafShare: Float32Array.of(1, 0, 1, 1),
    },
    crowns: {
      count: crowns.length,
      values: crownValues,
      form: Uint8Array.from(crowns, (c) => c.form ?? 0),
      leafClass: Uint8Array.from(crowns, (c) => c.leafClass ?? 0),
      thing: Uint16Array.from(crowns, (c, i) => c.thing ?? i),
    },
    prisms: {
      count: pieces.length,
      ringStart: Uint32Array.from(ringStart),
      ringXY: Float64Array.from(pieces.flatMap((piece) => [...piece.ring])),
      values: prismValues,
      solid: Uint8Array.from(pieces, (piece) => Number(piece.depthOn === undefined)),
      leafClass: Uint8Array.from(pieces, (piece) => piece.leafClass ?? 0),
      thing: Uint16Array.from(pieces, (piece, p) => piece.thing ?? crowns.length + p),
    },
    ...rest,
  };
}

/** Sum over the months of one cell of a 12-band result. */
export function yearOf(bands: Float32Array, cell: number): number {
  const cells = bands.length / 12;
  let sum = 0;
  for (let month = 0; month < 12; month++) sum += bands[month * cells + cell];
  return sum;
}
