import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch } from './sketch.ts';

const NEIGHBOUR = 'the neighbour';
const COMMON_LAND = 'the village';

/** What shades and shelters already: the neighbour’s spruces, hedges, a wood, a barn, a wall. */
export function sorrelBankEdges({ line, area }: Sketch): SiteFeature[] {
  return [
    line(
      'belt-spruce-west',
      [
        [-73, 52],
        [-75, 0],
        [-74, -60],
      ],
      {
        kind: 'belt',
        name: 'Spruces on the west edge',
        status: 'existing',
        owner: NEIGHBOUR,
        species: 'Picea abies',
        heightM: 19,
        measuredYear: 2026,
        widthM: 8,
        baseHeightM: 1.5,
        opticalPorosityLeafOn: 0.25,
        opticalPorosityLeafOff: 0.25,
        note: 'The neighbour may fell them.',
      },
    ),
    line(
      'belt-spruce-south-west',
      [
        [-68, -66],
        [-40, -71],
        [-6, -71],
      ],
      {
        kind: 'belt',
        name: 'Spruces on the south-west edge',
        status: 'existing',
        owner: NEIGHBOUR,
        species: 'Picea abies',
        heightM: 17,
        measuredYear: 2026,
        widthM: 7,
        baseHeightM: 1.5,
      },
    ),
    line(
      'belt-east-hedge-south',
      [
        [55, -52],
        [61, -20],
        [62, -2],
      ],
      {
        kind: 'belt',
        name: 'Hawthorn hedge',
        status: 'existing',
        heightM: 2.4,
        widthM: 1.6,
        opticalPorosityLeafOn: 0.25,
        opticalPorosityLeafOff: 0.5,
        note: 'Cut every winter: without a species it does not grow in the model.',
      },
    ),
    line(
      'belt-east-hedge-north',
      [
        [61, 16],
        [58, 42],
      ],
      {
        kind: 'belt',
        name: 'Hawthorn hedge, north of the gate',
        status: 'existing',
        heightM: 2.4,
        widthM: 1.6,
        opticalPorosityLeafOn: 0.25,
        opticalPorosityLeafOff: 0.5,
      },
    ),
    line(
      'belt-withy-willows',
      [
        [88, -166],
        [150, -172],
        [206, -150],
      ],
      {
        kind: 'belt',
        name: 'Willows along the stream',
        status: 'existing',
        owner: COMMON_LAND,
        species: 'Salix alba',
        heightM: 13,
        measuredYear: 2026,
        widthM: 6,
      },
    ),
    area(
      'block-maple-wood',
      [
        [92, 34],
        [168, 22],
        [188, 96],
        [150, 132],
        [104, 118],
      ],
      {
        kind: 'block',
        name: 'Maple wood',
        status: 'existing',
        owner: COMMON_LAND,
        species: 'Acer saccharum',
        heightM: 17,
        measuredYear: 2026,
        baseHeightM: 2,
        opticalPorosityLeafOn: 0.15,
        opticalPorosityLeafOff: 0.4,
        leafAreaDensityM2M3: 0.4,
      },
    ),
    area(
      'building-barn',
      [
        [67, -38],
        [82, -36],
        [80.5, -25],
        [65.5, -27],
      ],
      { kind: 'building', name: 'Barn', heightM: 6.5 },
    ),
    line(
      'wall-upper-lea',
      [
        [-198, 74],
        [-192, 152],
        [-128, 175],
      ],
      { kind: 'wall', name: 'Field wall', heightM: 1.3, opticalPorosity: 0 },
    ),
  ];
}
