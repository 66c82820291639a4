import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch, Spot } from './sketch.ts';

/** Six patches of understorey in Pound Field, and what is planted in some of them. */
export function sorrelBankPatches({ line, area, point }: Sketch): SiteFeature[] {
  const patch = (id: string, name: string, corners: readonly Spot[], rest: object = {}): SiteFeature =>
    area(id, corners, { kind: 'patch', name, ...rest });
  return [
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
