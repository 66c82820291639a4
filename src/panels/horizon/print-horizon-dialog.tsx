import { horizonPage } from '../../sheets/horizon-page.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import type { AppState } from '../../state/model.ts';
import { PaperDialog } from '../print/paper-dialog.tsx';
import { horizonPageInput } from './horizon-input.ts';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const input = horizonPageInput(app, paper, today);
  return input ? [horizonPage(input)] : [];
};

/** The horizon to take outside. */
export const PrintHorizonDialog = () => (
  <PaperDialog
    title="Horizon on paper"
    words="The printed horizon"
    file="horizon"
    backTo="horizon"
    pagesOf={pagesOf}
  />
);
