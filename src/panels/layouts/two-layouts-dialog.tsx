import { useMemo, useState } from 'react';
import { answerOf } from '../../layouts/layout-words.ts';
import { linkedView } from '../../map/linked-view.ts';
import { pairComparison, pairOf } from '../../state/pair-shown.ts';
import { useApp } from '../../state/store.ts';
import { Answer } from '../parts/answer.tsx';
import { Dialog } from '../parts/dialog.tsx';
import { DifferenceTable } from './difference-table.tsx';
import { PairChoices } from './pair-choices.tsx';
import { PairLegend } from './pair-legend.tsx';
import { PairSide } from './pair-side.tsx';
import { PriceFields } from './price-fields.tsx';
import { ShelterLines } from './shelter-lines.tsx';
import './layouts.css';

/** Two layouts beside each other: the answer, two plans that move together, and what differs. */
export function TwoLayoutsDialog() {
  const pair = useApp((app) => app.layoutPair);
  const layouts = useApp(pairOf);
  const comparison = useApp(pairComparison);
  const show = useApp((app) => app.show);
  const view = useMemo(linkedView, []);
  const [hatched, setHatched] = useState(false);
  if (!layouts) return null;
  const answer = comparison && answerOf(comparison);
  const percent = Math.round(100 * pair.progress);
  return (
    <Dialog title="Two layouts" whole onClose={() => show({ dialog: null })}>
      {pair.status === 'failed' ? (
        <Answer figure="Not worked out" dark>
          {pair.message}
        </Answer>
      ) : answer ? (
        <Answer figure={answer.figure} aged={pair.stale ? 'From before the last change.' : null}>
          {answer.says}
        </Answer>
      ) : (
        <Answer figure="…">Looking at both, year by year: {percent} %.</Answer>
      )}
      <PairChoices />
      <div className="pair-plans">
        <PairSide side={0} view={view} hatched={hatched} />
        <PairSide side={1} view={view} hatched={hatched} />
      </div>
      <div className="pair-under">
        <PairLegend hatched={hatched} onHatch={setHatched} />
        {comparison ? <ShelterLines comparison={comparison} /> : null}
      </div>
      {comparison ? <DifferenceTable comparison={comparison} /> : null}
      <PriceFields />
      <p className="progress-words small soft" role="status">
        {answer && pair.status === 'computing' ? `Working it out again: ${percent} %.` : ''}
      </p>
    </Dialog>
  );
}
