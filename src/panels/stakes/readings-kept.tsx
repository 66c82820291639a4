import { roughText } from '../../outside/tape-words.ts';
import type { StakeScore } from '../../stakes/score-readings.ts';
import { missFigure, readingWords, scoreSentences } from '../../stakes/score-words.ts';
import { acceptHeight } from '../../state/shadow-stakes.ts';
import { appStore, useApp } from '../../state/store.ts';
import { dayWords } from '../../sun/day-words.ts';
import { Answer } from '../parts/answer.tsx';
import { KeptList } from './kept-list.tsx';
import { useTapeUnit } from './use-tape-unit.ts';

/** How far the model missed, what that fits, and the readings one by one. */
export function ReadingsKept(props: { score: StakeScore }) {
  const { score } = props;
  const { height } = score;
  const of = useApp((app) => app.stakes?.of ?? null);
  const unit = useTapeUnit();
  const readings = [
    ...score.readings.map((scored) => ({ reading: scored.reading, words: readingWords(scored, unit) })),
    ...score.left.map(({ reading, why }) => ({ reading, words: `not scored: ${why}` })),
  ].map(({ reading: { id, date, time }, words }) => ({
    id,
    title: `${dayWords(date)}, ${time}`,
    words,
    removes: `the reading of ${time}`,
    edit: `Remove the reading of ${time}`,
  }));
  return (
    <section className="section" aria-label="Readings" data-testid="stake-score">
      <Answer figure={missFigure(score, unit)} dark={score.cause.what !== 'nothing'}>
        {scoreSentences(score, unit).join(' ')}
      </Answer>
      {height && of !== null ? (
        <div className="buttons">
          <button type="button" onClick={() => acceptHeight(appStore.getState(), of, height)}>
            Take {roughText(height.heightM, unit)} as its height
          </button>
        </div>
      ) : null}
      <KeptList readings={readings} />
    </section>
  );
}
