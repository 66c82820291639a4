import { useEffect } from 'react';
import { appStore, useApp } from '../../state/store.ts';
import { addSpot } from '../../state/wind-spots.ts';
import { ChooseDialog } from '../choose/choose-dialog.tsx';
import { PrintChoiceDialog } from '../choose/print-choice-dialog.tsx';
import { PhotoDialog } from '../ground/photo-dialog.tsx';
import { SidesDialog } from '../ground/sides-dialog.tsx';
import { SPOTS_PURPOSE, SpotLevelsDialog } from '../ground/spot-levels-dialog.tsx';
import { GrowthDialog } from '../growth/growth-dialog.tsx';
import { HorizonDialog } from '../horizon/horizon-dialog.tsx';
import { PrintHorizonDialog } from '../horizon/print-horizon-dialog.tsx';
import { LayoutsDialog } from '../layouts/layouts-dialog.tsx';
import { TwoLayoutsDialog } from '../layouts/two-layouts-dialog.tsx';
import { SPOT_PURPOSE } from '../parts/ask-spot.tsx';
import { PrintDialog } from '../print/print-dialog.tsx';
import { DrawWindDialog } from '../shelter/draw-wind-dialog.tsx';
import { PrintWindDialog } from '../shelter/print-wind-dialog.tsx';
import { WindTableDialog } from '../shelter/wind-table-dialog.tsx';
import { WindWordsDialog } from '../shelter/wind-words-dialog.tsx';
import { PrintStakesDialog } from '../stakes/print-stakes-dialog.tsx';
import { NewSiteDialog } from '../start/new-site-dialog.tsx';
import { TreeHeightDialog } from '../trees/tree-height-dialog.tsx';
import { WindHereDialog } from '../wind-here/wind-here-dialog.tsx';
import { PrintWindSpotsDialog } from '../wind-spots/print-wind-spots-dialog.tsx';

/** The one dialog that is open, if any. */
export function Dialogs() {
  const dialog = useApp((app) => app.dialog);
  const pointed = useApp((app) => app.pointed);
  const show = useApp((app) => app.show);
  useEffect(() => {
    // The dialog that asked for points on the map comes back with them.
    if (pointed?.complete && pointed.purpose === SPOTS_PURPOSE) show({ dialog: 'spot-levels' });
    if (pointed?.complete && pointed.purpose === SPOT_PURPOSE.horizon)
      show({ dialog: 'horizon', horizonAt: pointed.points[0] });
    if (pointed?.complete && pointed.purpose === SPOT_PURPOSE.wind)
      show({ dialog: 'wind-here', windAt: pointed.points[0] });
    if (pointed?.complete && pointed.purpose === SPOT_PURPOSE.windSpot)
      addSpot(appStore.getState(), pointed.points[0]);
  }, [pointed, show]);
  switch (dialog) {
    case 'new-site':
      return <NewSiteDialog />;
    case 'sides':
      return <SidesDialog />;
    case 'photo':
      return <PhotoDialog />;
    case 'spot-levels':
      return <SpotLevelsDialog />;
    case 'wind-words':
      return <WindWordsDialog />;
    case 'wind-drawn':
      return <DrawWindDialog />;
    case 'wind-table':
      return <WindTableDialog />;
    case 'print-wind':
      return <PrintWindDialog />;
    case 'tree-height':
      return <TreeHeightDialog />;
    case 'growth':
      return <GrowthDialog />;
    case 'print':
      return <PrintDialog />;
    case 'print-stakes':
      return <PrintStakesDialog />;
    case 'print-wind-spots':
      return <PrintWindSpotsDialog />;
    case 'horizon':
      return <HorizonDialog />;
    case 'print-horizon':
      return <PrintHorizonDialog />;
    case 'wind-here':
      return <WindHereDialog />;
    case 'choose-field':
      return <ChooseDialog />;
    case 'print-choice':
      return <PrintChoiceDialog />;
    case 'layouts':
      return <LayoutsDialog />;
    case 'two-layouts':
      return <TwoLayoutsDialog />;
    default:
      return null;
  }
}
