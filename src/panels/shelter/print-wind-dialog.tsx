import type { PaperSize } from '../../sheets/paper.ts';
import { windPages } from '../../sheets/wind-page.ts';
import type { AppState } from '../../state/model.ts';
import { PaperDialog } from '../print/paper-dialog.tsx';
import { windPageInput } from './wind-page-input.ts';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const input = windPageInput(app, paper, today);
  return input ? windPages(input) : [];
};

/** The page of the wind. */
export const PrintWindDialog = () => (
  <PaperDialog title="The wind on paper" words="The page of the wind" file="wind" pagesOf={pagesOf} />
);
