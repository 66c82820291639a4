import type { PaperSize } from '../../sheets/paper.ts';
import { stakesPages } from '../../sheets/stakes-page.ts';
import type { AppState } from '../../state/model.ts';
import { PaperDialog } from '../print/paper-dialog.tsx';
import { stakesPageInput } from './page-input.ts';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const input = stakesPageInput(app, paper, today);
  return input ? stakesPages(input) : [];
};

/** The page of shadow stakes to take outside. */
export const PrintStakesDialog = () => (
  <PaperDialog
    title="Shadow stakes on paper"
    words="The page of shadow stakes"
    counted
    file="shadow-stakes"
    pagesOf={pagesOf}
  />
);
