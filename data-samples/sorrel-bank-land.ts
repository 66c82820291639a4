import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch } from './sketch.ts';

/** The three fields, the ways, what must be kept free, and two readings taken outside. */
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
