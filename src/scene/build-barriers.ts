import type { Barrier } from '../crowns/barrier.ts';
import type { Frame } from '../geo/frame.ts';
import { ringToLocal } from '../geo/rasterise.ts';
import type { StandingBuilding, StandingWindbreak } from './build-prisms.ts';
import type { LeafClasses } from './leaf-phases.ts';
import { localRings } from './local-rings.ts';

/** Belts, blocks, walls and buildings as the shelter engine takes them. */
export function buildBarriers(
  breaks: readonly StandingWindbreak[],
  buildings: readonly StandingBuilding[],
  frame: Frame,
  leafClasses: LeafClasses,
): Barrier[] {
  const windbreaks = breaks.map(({ thing, feature, stand }): Barrier => {
    const { geometry } = feature;
    const points =
      geometry.type === 'LineString'
        ? ringToLocal(frame, geometry.coordinates)
        : localRings(frame, geometry.coordinates)[0];
    return {
      thing,
      shape: geometry.type === 'LineString' ? 'line' : 'area',
      xyM: Float64Array.from(points.flat()),
      heightM: new Float64Array(points.length).fill(stand.heightM),
      baseM: stand.baseM,
      widthM: stand.widthM,
      porosityOn: stand.porosityOn,
      porosityOff: stand.porosityOff,
      leafClass: leafClasses.indexOf(stand.calendar),
    };
  });
  const houses = buildings.map(({ thing, feature, heightM }): Barrier => {
    const ring = localRings(frame, feature.geometry.coordinates)[0];
    return {
      thing,
      shape: 'area',
      xyM: Float64Array.from(ring.flat()),
      heightM: new Float64Array(ring.length).fill(heightM),
      baseM: 0,
      widthM: 0,
      porosityOn: 0,
      porosityOff: 0,
      leafClass: 0,
    };
  });
  return [...windbreaks, ...houses];
}
