import { choosePage } from '../../sheets/choose-page.ts';
import type { PaperSize } from '../../sheets/paper.ts';
import { choiceUnits, fieldChoice } from '../../state/fields-compared.ts';
import type { AppState } from '../../state/model.ts';
import { dayWords } from '../../sun/day-words.ts';
import { PaperDialog } from '../print/paper-dialog.tsx';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const choice = fieldChoice(app);
  if (!choice) return [];
  const madeOn = dayWords(today.toISOString().slice(0, 10));
  return [choosePage({ paper, choice, layout: app.layout, units: choiceUnits(app.unitSystem), madeOn })];
};

/** The fields side by side, to be read aloud. */
export const PrintChoiceDialog = () => (
  <PaperDialog
    title="The choice on paper"
    words="The page of the fields"
    file="which-field"
    backTo="choose-field"
    pagesOf={pagesOf}
  />
);
