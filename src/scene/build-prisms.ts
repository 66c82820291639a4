import { PRISM_STRIDE, type PrismSet } from '../crowns/prism-set.ts';
import type { Frame } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { Grid } from '../numeric/grid.ts';
import type { FeatureOf } from '../site/document.ts';
import type { Ring } from './convex.ts';
import { groundAt } from './ground-at.ts';
import type { LeafClasses } from './leaf-phases.ts';
import { localRings } from './local-rings.ts';
import { type GroundedPiece, piecesOnGround } from './pieces-on-ground.ts';
import { polygonPieces } from './polygon-pieces.ts';
import type { WindbreakStand } from './stand-at-year.ts';
import { stripPieces } from './strip-pieces.ts';

export interface StandingWindbreak {
  readonly thing: number;
  readonly feature: FeatureOf<'belt' | 'block' | 'wall'>;
  readonly stand: WindbreakStand;
}
export interface StandingBuilding {
  readonly thing: number;
  readonly feature: FeatureOf<'building'>;
  readonly heightM: number;
}

/** How far the body of a solid reaches below its ground plane (m), so that no light slips under it on a slope. */
const FOUNDATION_M = 50;

interface Piece extends GroundedPiece {
  readonly thing: number;
  readonly baseM: number;
  readonly topM: number;
  readonly depthPerMOn: number;
  readonly depthPerMOff: number;
  readonly solid: boolean;
  readonly leafClass: number;
}

/** The convex footprint pieces of a belt, block or wall, local metres. */
export function footprintPieces(frame: Frame, { feature, stand }: Omit<StandingWindbreak, 'thing'>): Ring[] {
  const { geometry } = feature;
  return geometry.type === 'LineString'
    ? stripPieces(ringToLocal(frame, geometry.coordinates), stand.widthM)
    : polygonPieces(localRings(frame, geometry.coordinates));
}

function windbreakPieces(
  breaks: readonly StandingWindbreak[],
  frame: Frame,
  ground: Grid,
  leafClasses: LeafClasses,
): Piece[] {
  return breaks.flatMap((standing) => {
    const { stand, thing } = standing;
    return footprintPieces(frame, standing)
      .flatMap((ring) => piecesOnGround(ring, ground))
      .map((piece) => ({
        ...piece,
        thing,
        baseM: stand.solid ? -FOUNDATION_M : stand.baseM,
        topM: stand.heightM,
        depthPerMOn: stand.depthPerMOn,
        depthPerMOff: stand.depthPerMOff,
        solid: stand.solid,
        leafClass: leafClasses.indexOf(stand.calendar),
      }));
  });
}

/** A building is a level box: its top is `heightM` above the mean ground of its corners. */
function buildingPieces(buildings: readonly StandingBuilding[], frame: Frame, ground: Grid): Piece[] {
  return buildings.flatMap(({ feature, heightM, thing }) => {
    const rings = localRings(frame, feature.geometry.coordinates);
    const levels = rings[0].map(([x, y]) => groundAt(ground, x, y));
    const meanM = levels.reduce((sum, level) => sum + level, 0) / levels.length;
    return polygonPieces(rings).map((ring) => ({
      ring,
      plane: { a: meanM, b: 0, c: 0 },
      thing,
      baseM: -FOUNDATION_M,
      topM: heightM,
      depthPerMOn: 0,
      depthPerMOff: 0,
      solid: true,
      leafClass: 0,
    }));
  });
}

/** Belts, blocks, walls and buildings as convex prisms, as arrays (see PrismSet). */
export function buildPrisms(
  breaks: readonly StandingWindbreak[],
  buildings: readonly StandingBuilding[],
  frame: Frame,
  ground: Grid,
  leafClasses: LeafClasses,
): PrismSet {
  const pieces = [
    ...windbreakPieces(breaks, frame, ground, leafClasses),
    ...buildingPieces(buildings, frame, ground),
  ];
  const ringStart = new Uint32Array(pieces.length + 1);
  pieces.forEach((piece, i) => {
    ringStart[i + 1] = ringStart[i] + piece.ring.length;
  });
  const values = new Float64Array(pieces.length * PRISM_STRIDE);
  pieces.forEach((piece, i) => {
    const { plane } = piece;
    values.set(
      [plane.a, plane.b, plane.c, piece.baseM, piece.topM, piece.depthPerMOn, piece.depthPerMOff],
      i * PRISM_STRIDE,
    );
  });
  return {
    count: pieces.length,
    ringStart,
    ringXY: Float64Array.from(pieces.flatMap((piece) => piece.ring.flat())),
    values,
    solid: Uint8Array.from(pieces, (piece) => (piece.solid ? 1 : 0)),
    leafClass: Uint8Array.from(pieces, (piece) => piece.leafClass),
    thing: Uint16Array.from(pieces, (piece) => piece.thing),
  };
}
