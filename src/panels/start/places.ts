import type { LonLat } from '../../geo/frame.ts';

/** Places to begin from without looking up coordinates: middles of temperate regions, no one's land in particular. */
export const PLACES: readonly { readonly name: string; readonly lonLat: LonLat }[] = [
  { name: 'British Isles, Midlands', lonLat: [-1.8, 52.5] },
  { name: 'Ireland, middle', lonLat: [-7.8, 53.3] },
  { name: 'Low Countries', lonLat: [5.5, 52.1] },
  { name: 'Germany, middle', lonLat: [9.9, 51.2] },
  { name: 'France, middle', lonLat: [2.5, 46.8] },
  { name: 'Alpine foreland', lonLat: [9.5, 47.6] },
  { name: 'Denmark and south Sweden', lonLat: [12.5, 55.8] },
  { name: 'Poland, middle', lonLat: [19.3, 52.0] },
  { name: 'Atlantic Canada', lonLat: [-64.5, 45.1] },
  { name: 'New England', lonLat: [-71.8, 43.2] },
  { name: 'Great Lakes', lonLat: [-83.5, 43.5] },
  { name: 'Pacific Northwest', lonLat: [-122.8, 45.6] },
  { name: 'Japan, north', lonLat: [141.3, 42.9] },
  { name: 'Tasmania', lonLat: [146.8, -42.0] },
  { name: 'New Zealand, South Island', lonLat: [171.9, -43.6] },
  { name: 'Chile, lake region', lonLat: [-72.4, -40.3] },
];
