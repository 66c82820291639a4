import type { StoreApi } from 'zustand/vanilla';
import { USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import { FIRST_COMPARING } from './layout-pair-found.ts';
import type { Actions, App, AppState } from './model.ts';

type ViewState = Pick<
  AppState,
  | 'step'
  | 'picture'
  | 'year'
  | 'playing'
  | 'yearsOpen'
  | 'period'
  | 'layer'
  | 'shownEnd'
  | 'inkedValues'
  | 'shelterOptions'
  | 'layout'
  | 'felled'
  | 'bridgesOf'
  | 'edgeAsked'
  | 'insuranceWish'
  | 'comparing'
  | 'unitSystem'
  | 'theme'
  | 'dialog'
  | 'panelOpen'
  | 'cellWantedM'
  | 'selection'
  | 'message'
  | 'brush'
  | 'pictureToLay'
  | 'horizonAt'
  | 'windAt'
  | 'stakes'
  | 'windSpots'
>;

export const FIRST_VIEW: ViewState = {
  step: 'light',
  picture: 'light-share',
  year: 20,
  playing: false,
  yearsOpen: false,
  period: 'season',
  layer: 'ground',
  shownEnd: null,
  inkedValues: { 'light-share': null, 'sun-hours': null, 'daily-light': null },
  shelterOptions: USUAL_SHELTER_OPTIONS,
  layout: null,
  felled: null,
  bridgesOf: null,
  edgeAsked: null,
  insuranceWish: null,
  comparing: FIRST_COMPARING,
  unitSystem: 'metric',
  theme: 'as-device',
  dialog: null,
  panelOpen: true,
  cellWantedM: null,
  selection: null,
  message: null,
  pictureToLay: null,
  horizonAt: null,
  windAt: null,
  stakes: null,
  windSpots: null,
  brush: {
    treeSpecies: 'Malus domestica',
    treeRootstock: null,
    rowSpacingM: 8,
    beltSpecies: 'Alnus cordata',
    beltWidthM: 3,
    wallHeightM: 2,
    wallPorosity: 0,
    buildingHeightM: 5,
    status: 'planned',
  },
};

/** What is looked at and how; nothing here changes the site. */
export function viewActions(
  set: StoreApi<App>['setState'],
): Pick<Actions, 'show' | 'select' | 'say' | 'setBrush'> {
  return {
    show: (view) => set(view),
    select: (selection) => set({ selection }),
    say: (message) => set({ message }),
    setBrush: (brush) => set((app) => ({ brush: { ...app.brush, ...brush } })),
  };
}
