import type { PaperSize } from '../../sheets/paper.ts';
import { windSpotsPages } from '../../sheets/wind-spots-page.ts';
import type { AppState } from '../../state/model.ts';
import { windSpotsAnswer } from '../../state/wind-spots.ts';
import { outdoorPageInput } from '../print/outdoor-input.ts';
import { PaperDialog } from '../print/paper-dialog.tsx';

const pagesOf = (app: AppState, paper: PaperSize, today: Date) => {
  const plan = windSpotsAnswer(app)?.plan;
  if (!plan) return [];
  const input = outdoorPageInput(app, { paper, today, date: plan.date, middle: plan.belt.middle });
  return input ? windSpotsPages({ ...input, plan }) : [];
};

/** The page to take outside with two hand meters. */
export const PrintWindSpotsDialog = () => (
  <PaperDialog
    title="Wind spots on paper"
    words="The page of wind spots"
    counted
    file="wind-spots"
    pagesOf={pagesOf}
  />
);
