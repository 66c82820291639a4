import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch, Spot } from './sketch.ts';

/** Belts to plant, a net for the first years, patches and understorey: what is planned for Pound Field. */
export function sorrelBankPlan({ line, area, point }: Sketch): SiteFeature[] {
  const patch = (id: string, name: string, corners: readonly Spot[], rest: object = {}): SiteFeature =>
    area(id, corners, { kind: 'patch', name, ...rest });
  return [
    line(
      'belt-north-alders',
      [
        [-56, 43],
        [0, 47.5],
        [26, 44],
      ],
      {
        kind: 'belt',
        name: 'North alder belt',
        status: 'planned',
        species: 'Alnus cordata',
        plantedYear: 2027,
        heightM: 0.9,
        widthM: 3,
        opticalPorosityLeafOn: 0.4,
      },
    ),
    line(
      'belt-inner-alders',
      [
        [-60, 36],
        [-61.5, 0],
        [-61, -40],
      ],
      {
        kind: 'belt',
        name: 'Inner alder belt',
        status: 'planned',
        species: 'Alnus cordata',
        plantedYear: 2029,
        heightM: 0.9,
        widthM: 2.5,
        opticalPorosityLeafOn: 0.45,
        note: 'In case the neighbour fells the spruces.',
      },
    ),
    line(
      'wall-net',
      [
        [-54, 39.5],
        [0, 43.5],
        [40, 38],
      ],
      {
        kind: 'wall',
        name: 'Shelter net',
        heightM: 2,
        opticalPorosity: 0.5,
        fromYear: 2027,
        toYear: 2035,
        note: 'Bridges the years until the alders protect.',
      },
    ),

    patch(
      'patch-berry-rows',
      'Berry rows',
      [
        [14, 11],
        [44, 13],
        [43, 24],
        [14, 22],
      ],
      { layer: 'shrub' },
    ),
    patch(
      'patch-herb-ground',
      'Herb ground',
      [
        [-19, -10],
        [1, -9],
        [1, -25],
        [-19, -25],
      ],
      { lightShareToKeep: 0.7 },
    ),
    patch(
      'patch-low-patch',
      'Low patch',
      [
        [-33, -35],
        [-10, -35],
        [-10, -50],
        [-33, -49],
      ],
      { lightShareToKeep: 0.6 },
    ),
    patch('patch-seedling-ground', 'Seedling ground', [
      [-46, 5],
      [-24, 8],
      [-25, 19],
      [-47, 17],
    ]),
    patch(
      'patch-bee-bank',
      'Bee bank',
      [
        [37, -8],
        [54, -8],
        [52, -26],
        [37, -25],
      ],
      { readingHeightM: 0.3 },
    ),
    patch(
      'patch-roots-and-greens',
      'Roots and greens',
      [
        [6, -8],
        [20, -9],
        [22, -26],
        [6, -26],
      ],
      { lightShareToKeep: 0.5 },
    ),

    line(
      'planting-blackcurrants',
      [
        [16, 14],
        [42, 15.5],
      ],
      {
        kind: 'planting',
        name: 'Blackcurrant row',
        species: 'Ribes nigrum',
        spacingM: 1.6,
        plantedYear: 2029,
      },
    ),
    line(
      'planting-gooseberries',
      [
        [16, 20],
        [42, 21.5],
      ],
      {
        kind: 'planting',
        name: 'Gooseberry row',
        species: 'Ribes uva-crispa',
        spacingM: 1.4,
        plantedYear: 2029,
      },
    ),
    area(
      'planting-comfrey',
      [
        [-45, 21],
        [-29, 22],
        [-29, 25],
        [-45, 24],
      ],
      {
        kind: 'planting',
        name: 'Comfrey strip',
        spacingM: 0.8,
        plantedYear: 2028,
        note: 'For mulch only: not for eating or drinking.',
      },
    ),
    point('planting-marjoram', [40, -11], {
      kind: 'planting',
      name: 'Marjoram for the bees',
      count: 24,
      plantedYear: 2030,
    }),
  ];
}
