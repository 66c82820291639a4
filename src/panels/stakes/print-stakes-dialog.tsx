import type { PaperSize } from '../../sheets/paper.ts';
import { stakesPages } from '../../sheets/stakes-page.ts';
import type { AppState } from '../../state/model.ts';
import { OutdoorDialog } from '../print/outdoor-dialog.tsx';
import { stakesPageInput } from './page-input.ts';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const input = stakesPageInput(app, paper, today);
  return input ? stakesPages(input) : [];
};

/** The page of shadow stakes to take outside. */
export const PrintStakesDialog = () => (
  <OutdoorDialog
    title="Shadow stakes on paper"
    shows="shadow stakes"
    file="shadow-stakes"
    pagesOf={pagesOf}
  />
);
