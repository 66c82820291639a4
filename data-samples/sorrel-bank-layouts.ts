import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch, Spot } from './sketch.ts';

const SHELTER_FIRST = 'Shelter first';
const EVERYTHING_AT_ONCE = 'Everything at once';

const BELTS_PLANTED = 2027;
/** Half of the field is in shelter by then only where the belts grow fast: so the two differ by more than years. */
const TREES_IN_SHELTER_PLANTED = 2033;

/** The alternative designs of the site, in the order of its list. */
export const SORREL_BANK_LAYOUTS = [
  {
    name: SHELTER_FIRST,
    note: 'Invented: Upper Lea with its belts planted first, and the fruit six years later.',
  },
  { name: EVERYTHING_AT_ONCE, note: 'Invented: the same with everything planted in the first year.' },
];

const BELTS: readonly (readonly [id: string, name: string, spots: readonly Spot[]])[] = [
  [
    'belt-lea-west',
    'West hornbeam belt',
    [
      [-190, 80],
      [-185, 146],
    ],
  ],
  [
    'belt-lea-south',
    'South hornbeam belt',
    [
      [-186, 77],
      [-112, 66],
      [-80, 77],
    ],
  ],
];

const TREES: readonly (readonly [
  tag: string,
  species: string,
  eastM: number,
  northM: number,
  rest: object,
])[] = [
  ['N11', 'Juglans regia', -172, 134, {}],
  ['N12', 'Castanea sativa', -98, 142, {}],
  ['N13', 'Juglans ailantifolia', -148, 136, {}],
  ['F28', 'Malus domestica', -176, 92, { rootstock: 'MM106', variety: 'early dessert' }],
  ['F29', 'Malus domestica', -162, 91, { rootstock: 'MM106', variety: 'late dessert' }],
  ['F30', 'Malus domestica', -148, 89, { rootstock: 'MM106', variety: 'cooker' }],
  ['F31', 'Malus domestica', -176, 104, { rootstock: 'MM106', variety: 'keeper' }],
  ['F32', 'Malus domestica', -162, 104, { rootstock: 'MM106', variety: 'keeper' }],
  ['F33', 'Malus domestica', -148, 104, { rootstock: 'MM106', variety: 'cider' }],
  ['F34', 'Pyrus communis', -174, 117, { rootstock: 'Quince A', variety: 'dessert' }],
  ['F35', 'Pyrus communis', -161, 117, { rootstock: 'Quince A', variety: 'keeper' }],
  ['F36', 'Pyrus communis', -148, 117, { rootstock: 'Quince A', variety: 'keeper' }],
  ['F37', 'Prunus domestica', -122, 86, { rootstock: 'St Julien A', variety: 'dessert plum' }],
  ['F38', 'Prunus domestica', -110, 86, { rootstock: 'St Julien A', variety: 'damson' }],
  ['F39', 'Prunus domestica', -98, 87, { rootstock: 'St Julien A', variety: 'gage' }],
  ['F40', 'Prunus cerasus', -122, 99, { rootstock: 'Colt', variety: 'sour cherry' }],
  ['F41', 'Prunus avium', -108, 100, { rootstock: 'Gisela 5', variety: 'black cherry' }],
  ['N14', 'Corylus avellana', -94, 101, {}],
  ['N15', 'Corylus avellana', -122, 113, {}],
  ['N16', 'Corylus avellana', -109, 114, {}],
];

const PATCHES: readonly (readonly [id: string, name: string, corners: readonly Spot[]])[] = [
  [
    'patch-lea-herbs',
    'Lea herb ground',
    [
      [-178, 122],
      [-152, 123],
      [-153, 129],
      [-178, 129],
    ],
  ],
  [
    'patch-lea-currants',
    'Lea currants',
    [
      [-126, 122],
      [-90, 122],
      [-90, 132],
      [-126, 133],
    ],
  ],
];

/** Two designs of Upper Lea: the same belts, trees and patches at the same places, planted in other years. */
export const sorrelBankLayouts = (sketch: Sketch): SiteFeature[] => [
  ...layoutOf(sketch, SHELTER_FIRST, 'first', TREES_IN_SHELTER_PLANTED),
  ...layoutOf(sketch, EVERYTHING_AT_ONCE, 'at-once', BELTS_PLANTED),
];

function layoutOf(
  { line, point, area }: Sketch,
  layout: string,
  suffix: string,
  treesPlanted: number,
): SiteFeature[] {
  return [
    ...BELTS.map(([id, name, spots]) =>
      line(`${id}-${suffix}`, spots, {
        kind: 'belt',
        layout,
        name,
        status: 'planned',
        species: 'Carpinus betulus',
        plantedYear: BELTS_PLANTED,
        widthM: 3,
        opticalPorosityLeafOn: 0.4,
      }),
    ),
    ...TREES.map(([tag, species, eastM, northM, rest]) =>
      point(`tree-${tag.toLowerCase()}-${suffix}`, [eastM, northM], {
        kind: 'tree',
        layout,
        tag,
        species,
        status: 'planned',
        plantedYear: treesPlanted,
        ...rest,
      }),
    ),
    ...PATCHES.map(([id, name, corners]) =>
      area(`${id}-${suffix}`, corners, { kind: 'patch', layout, name, layer: 'ground' }),
    ),
  ];
}
