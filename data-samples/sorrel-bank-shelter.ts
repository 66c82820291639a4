import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch } from './sketch.ts';

/** Shelter to be grown first: two alder belts, and a net for the years until they protect. */
export function sorrelBankShelter({ line }: Sketch): SiteFeature[] {
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
  ];
}
