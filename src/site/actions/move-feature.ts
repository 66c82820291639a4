import type { LonLat } from '../../geo/frame.ts';
import type { FeatureId, SiteDocument } from '../document.ts';
import { carriedCoordinates, firstPlace, placeBeside } from '../places.ts';
import { changeFeatures, withCoordinates } from './change-features.ts';

/** Moves features by metres to the true east and north (negative: west, south), each keeping its form. */
export const moveFeatures = (
  document: SiteDocument,
  ids: readonly FeatureId[],
  eastM: number,
  northM: number,
): SiteDocument =>
  changeFeatures(document, ids, (feature) => {
    const from = firstPlace(feature.geometry.coordinates);
    const to = placeBeside(from, eastM, northM);
    return withCoordinates(feature, carriedCoordinates(feature.geometry.coordinates, from, to));
  });

/** Moves a feature so that what was held at one place is at another; a tree is held at its stem, whatever `from` is. */
export const moveFeatureTo = (
  document: SiteDocument,
  id: FeatureId,
  to: LonLat,
  from: LonLat | null = null,
): SiteDocument =>
  changeFeatures(document, [id], (feature) => {
    const { type, coordinates } = feature.geometry;
    const held = from === null || type === 'Point' ? firstPlace(coordinates) : from;
    return withCoordinates(feature, carriedCoordinates(coordinates, held, to));
  });
