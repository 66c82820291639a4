import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch } from './sketch.ts';

const NEIGHBOUR = 'the neighbour';
const COMMON_LAND = 'the village';

/** Fields, edges, buildings and ways: what is there before anything is planned. */
export function sorrelBankLand({ line, area, point }: Sketch): SiteFeature[] {
  return [
    area(
      'field-upper-lea',
      [
        [-196, 72],
        [-112, 60],
        [-72, 74],
        [-66, 150],
        [-128, 172],
        [-190, 150],
      ],
      { kind: 'field', name: 'Upper Lea', taken: false, note: 'Open, sunny, windy.' },
    ),
    area(
      'field-pound-field',
      [
        [-66, -55],
        [-28, -61],
        [52, -56],
        [60, -10],
        [56, 41],
        [0, 50],
        [-63, 44],
      ],
      {
        kind: 'field',
        name: 'Pound Field',
        taken: true,
        note: 'Half way down; tall spruces west and south-west.',
      },
    ),
    area(
      'field-withy-bottom',
      [
        [92, -148],
        [150, -160],
        [198, -140],
        [194, -62],
        [140, -46],
        [96, -56],
      ],
      { kind: 'field', name: 'Withy Bottom', taken: false, note: 'Low and still: late frosts lie here.' },
    ),

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
    line(
      'path-main',
      [
        [59, 8],
        [22, 5],
        [-18, 1],
        [-52, -4],
      ],
      { kind: 'path', name: 'Cart track', offsetM: 1.5 },
    ),
    line(
      'path-lower',
      [
        [22, 5],
        [25, -24],
        [33, -52],
      ],
      { kind: 'path', name: 'Lower walk', offsetM: 0.8 },
    ),
    area(
      'keep-out-gate',
      [
        [48, 1],
        [60, 1],
        [60, 16],
        [48, 15],
      ],
      { kind: 'keepOut', name: 'Gate', offsetM: 0, reason: 'gate and turning place' },
    ),
    line(
      'service-overhead-line',
      [
        [28, 66],
        [86, 14],
      ],
      { kind: 'service', name: 'Overhead line', offsetM: 8, reason: 'overhead line' },
    ),
    line(
      'service-drain',
      [
        [-30, -57],
        [40, -53],
        [90, -70],
      ],
      { kind: 'service', name: 'Field drain', offsetM: 3, reason: 'drain' },
    ),
    point('measure-spruce', [-74, -12], {
      kind: 'measure',
      name: 'Height of the west spruces',
      quantity: 'height',
      value: 19,
      date: '2026-10-03',
      method: 'shadow at 15:10, level tape',
    }),
    point('measure-light', [-40, -26], {
      kind: 'measure',
      name: 'Light beside the spruces',
      quantity: 'light',
      value: 0.62,
      date: '2026-08-21',
      method: 'two readings at overcast noon, here and in Upper Lea',
    }),
  ];
}
