import { roughText } from '../../outside/tape-words.ts';
import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import type { StakeScore } from '../../stakes/score-readings.ts';
import { missFigure, readingWords, scoreSentences } from '../../stakes/score-words.ts';
import { acceptHeight } from '../../state/shadow-stakes.ts';
import { appStore, useApp } from '../../state/store.ts';
import { dayWords } from '../../sun/day-words.ts';
import { Answer } from '../parts/answer.tsx';
import { Details } from '../parts/panel-head.tsx';
import { useTapeUnit } from './use-tape-unit.ts';

/** How far the model missed, what that fits, and the readings one by one. */
export function ReadingsKept(props: { score: StakeScore }) {
  const { score } = props;
  const { height } = score;
  const edit = useApp((app) => app.edit);
  const of = useApp((app) => app.stakes?.of ?? null);
  const unit = useTapeUnit();
  const all = [
    ...score.readings.map((scored) => ({ reading: scored.reading, words: readingWords(scored, unit) })),
    ...score.left.map(({ reading, why }) => ({ reading, words: `not scored: ${why}` })),
  ];
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
      <Details title={all.length === 1 ? 'The reading' : `The ${all.length} readings`}>
        <ul className="readings-kept">
          {all.map(({ reading, words }) => (
            <li key={reading.id}>
              <p>
                <b>
                  {dayWords(reading.date)}, {reading.time}:
                </b>{' '}
                {words}.
              </p>
              <button
                type="button"
                onClick={() =>
                  edit(`Remove the reading of ${reading.time}`, (document) =>
                    deleteFeatures(document, [reading.id]),
                  )
                }
              >
                Remove<span className="unseen"> the reading of {reading.time}</span>
              </button>
            </li>
          ))}
        </ul>
      </Details>
    </section>
  );
}
