import type { SiteFeature } from '../src/site/document.ts';
import type { Sketch } from './sketch.ts';

type Row = readonly [tag: string, species: string, eastM: number, northM: number, rest: object];

const standing = (heightM: number, rest: object = {}) => ({
  status: 'existing',
  heightM,
  measuredYear: 2026,
  ...rest,
});
const planned = (plantedYear: number, rest: object = {}) => ({ status: 'planned', plantedYear, ...rest });
const on = (rootstock: string, variety: string, plantedYear = 2029) =>
  planned(plantedYear, { rootstock, variety, heightM: 1.2 });
/** Nurse trees come first and go when the fruit trees need their place. */
const nurse = (removedYear?: number) => planned(2027, removedYear ? { removedYear } : {});

const ROWS: readonly Row[] = [
  // Standing already.
  ['F1', 'Malus domestica', 45, -38, standing(6.2, { crownRadiusM: 3.1, state: 'old, hollow, bears well' })],
  ['F2', 'Prunus avium', 54, 30, standing(8.5, { crownBaseM: 1.8, plantedYear: 2013 })],
  [
    'T1',
    'Fraxinus excelsior',
    47,
    -52,
    standing(14, { crownBaseM: 3, removedYear: 2034, state: 'dying back' }),
  ],
  ['T2', 'Betula papyrifera', -6, -56, standing(9, { plantedYear: 2013 })],
  ['S1', 'Crataegus monogyna', -50, 41, standing(4.5, { plantedYear: 2012 })],
  ['U1', 'Sambucus nigra', 51, -44, standing(3.2)],
  ['F3', 'Sorbus aucuparia', -52, -53, standing(6, { plantedYear: 2014 })],

  // Few tall trees.
  ['N1', 'Juglans regia', -4, 29, planned(2028)],
  ['N2', 'Juglans regia', -9, -16, planned(2028, { crownBaseM: 2 })],
  ['N3', 'Castanea sativa', -21, -43, planned(2028, { crownBaseM: 2.2 })],
  ['N4', 'Juglans ailantifolia', 28, -40, planned(2029)],
  ['T3', 'Acer saccharum', -50, -20, planned(2028)],
  ['N5', 'Castanea sativa', -35, 30, planned(2028)],
  ['F4', 'Morus nigra', 36, 31, planned(2030)],
  ['F5', 'Diospyros virginiana', 15, 34, planned(2030)],

  // Nurses.
  ['A1', 'Alnus cordata', -15, -28, nurse()],
  ['A2', 'Alnus cordata', -6, -28, nurse()],
  ['A3', 'Alnus cordata', 3, -28, nurse()],
  ['A4', 'Alnus cordata', -23, -18, nurse()],
  ['A5', 'Alnus cordata', -35, -51, nurse()],
  ['A6', 'Alnus cordata', -27, -52, nurse()],
  ['A7', 'Alnus cordata', -16, -52, nurse()],
  ['A8', 'Alnus cordata', -6, -42, nurse()],
  ['A9', 'Alnus glutinosa', -45, -44, nurse(2040)],
  ['A10', 'Alnus incana', -22, 27, nurse(2038)],
  ['A11', 'Alnus incana', 11, 28, nurse(2038)],
  ['A12', 'Elaeagnus umbellata', -53, 8, nurse()],
  ['A13', 'Hippophae rhamnoides', 31, -17, nurse()],
  ['A14', 'Caragana arborescens', 32, 1, nurse()],
  ['A15', 'Caragana arborescens', 45, 27, nurse()],
  ['A16', 'Elaeagnus umbellata', 11, -49, nurse()],

  // Fruit.
  ['F6', 'Malus domestica', -42, 36, on('MM106', 'early dessert')],
  ['F7', 'Malus domestica', -28, 36, on('MM106', 'late dessert')],
  ['F8', 'Malus domestica', -18, 37, on('MM106', 'cooker')],
  ['F9', 'Malus domestica', -10, 16, on('M26', 'mid-season dessert')],
  ['F10', 'Malus domestica', 0, 15, on('M26', 'keeper')],
  ['F11', 'Malus domestica', 14, -38, on('M25', 'cider')],
  ['F12', 'Malus domestica', 20, -51, on('M25', 'cider')],
  ['F13', 'Pyrus communis', 18, 28, on('Quince A', 'dessert')],
  ['F14', 'Pyrus communis', 26, 29, on('Quince A', 'keeper')],
  ['F15', 'Pyrus communis', 6, 38, on('Seedling', 'perry')],
  ['F16', 'Prunus domestica', -42, -8, on('St Julien A', 'dessert plum')],
  ['F17', 'Prunus domestica', -34, -7, on('St Julien A', 'damson')],
  ['F18', 'Prunus domestica', -38, -16, on('Pixy', 'gage')],
  ['F19', 'Prunus cerasus', 38, -2, on('Colt', 'sour cherry')],
  ['F20', 'Prunus avium', 8, 21, on('Gisela 5', 'black cherry')],
  ['F21', 'Prunus armeniaca', 46, -1, on('St Julien A', 'hardy apricot', 2031)],
  ['F22', 'Prunus persica', 38, -30, on('St Julien A', 'hardy peach', 2031)],
  ['F23', 'Cydonia oblonga', 38, -48, planned(2030, { heightM: 1 })],
  ['F24', 'Mespilus germanica', -30, -26, planned(2030, { heightM: 1 })],
  ['F25', 'Amelanchier lamarckii', -44, -33, planned(2030)],
  ['F26', 'Cornus mas', 28, -8, planned(2030)],
  ['F27', 'Asimina triloba', -16, 10, planned(2031)],

  // Nut bushes and shrubs on the edges.
  ['N6', 'Corylus avellana', -52, 30, planned(2028)],
  ['N7', 'Corylus avellana', -53, 21, planned(2028)],
  ['N8', 'Corylus avellana', -52, -34, planned(2028)],
  ['N9', 'Corylus maxima', -5, 40, planned(2028)],
  ['N10', 'Corylus maxima', 50, 21, planned(2028)],
  ['U2', 'Sambucus canadensis', -40, -52, planned(2029)],
  ['U3', 'Amelanchier alnifolia', 54, -16, planned(2029)],
  ['U4', 'Aronia melanocarpa', 50, -32, planned(2029)],
  ['U5', 'Viburnum opulus', 2, -47, planned(2029)],
  ['U6', 'Rosa canina', 53, -3, planned(2029)],
];

/** Some sixty trees and large shrubs of Pound Field, and what was once read of the birch. */
export function sorrelBankTrees({ point }: Sketch): SiteFeature[] {
  return [
    ...ROWS.map(([tag, species, eastM, northM, rest]) =>
      point(`tree-${tag.toLowerCase()}`, [eastM, northM], { kind: 'tree', tag, species, ...rest }),
    ),
    point('measure-birch', [-6, -56], {
      kind: 'measure',
      quantity: 'height',
      of: 'tree-t2',
      value: 6.1,
      date: '2021-10-09',
      method: 'by a stick',
    }),
  ];
}
