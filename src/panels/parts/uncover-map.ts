import { appStore } from '../../state/store.ts';

/** Where the panel lies over the map it makes room for what is done there. */
export function uncoverMap(): void {
  if (matchMedia('(max-width: 1100px)').matches) appStore.getState().show({ panelOpen: false });
}
