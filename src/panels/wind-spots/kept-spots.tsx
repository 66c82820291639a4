import { roughText } from '../../outside/tape-words.ts';
import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import { appStore, useApp } from '../../state/store.ts';
import { acceptBeltHeight, acceptPorosity, beltFindings } from '../../state/wind-spots.ts';
import { dayWords } from '../../sun/day-words.ts';
import type { SpotScore } from '../../windspots/score-spots.ts';
import { missFigure, readingWords, scoreSentences } from '../../windspots/score-words.ts';
import { percent } from '../../windspots/spot-words.ts';
import { Answer } from '../parts/answer.tsx';
import { Details } from '../parts/panel-head.tsx';
import { useTapeUnit } from '../stakes/use-tape-unit.ts';

/** How far the model missed, what that fits, and the readings one by one. */
export function KeptSpots({ score }: { score: SpotScore }) {
  const edit = useApp((app) => app.edit);
  const of = useApp((app) => app.windSpots?.of ?? null);
  const unit = useTapeUnit();
  const { heightM, porosity } = beltFindings(score);
  const all = [
    ...score.readings.map((scored) => ({ kept: scored.kept, words: readingWords(scored, unit) })),
    ...score.left.map(({ kept, why }) => ({ kept, words: `not scored: ${why}` })),
  ];
  return (
    <section className="section" aria-label="Readings" data-testid="wind-score">
      <Answer figure={missFigure(score)} dark={score.readings.some(({ within }) => within === 'neither')}>
        {scoreSentences(score, unit).join(' ')}
      </Answer>
      {of !== null && (heightM !== undefined || porosity !== undefined) ? (
        <div className="buttons">
          {heightM !== undefined ? (
            <button type="button" onClick={() => acceptBeltHeight(appStore.getState(), of, score, heightM)}>
              Take {roughText(heightM, unit)} as its height
            </button>
          ) : null}
          {porosity !== undefined ? (
            <button type="button" onClick={() => acceptPorosity(appStore.getState(), of, score, porosity)}>
              Take {percent(porosity)} as the daylight through it
            </button>
          ) : null}
        </div>
      ) : null}
      <Details title={all.length === 1 ? 'The reading' : `The ${all.length} readings`}>
        <ul className="readings-kept">
          {all.map(({ kept, words }) => (
            <li key={kept.id}>
              <p>
                <b>
                  {kept.reading ? `${dayWords(kept.reading.date)}, ` : ''}
                  {kept.name}:
                </b>{' '}
                {words}.
              </p>
              <button
                type="button"
                onClick={() =>
                  edit('Remove a reading of the wind', (document) => deleteFeatures(document, [kept.id]))
                }
              >
                Remove<span className="unseen"> {kept.name}</span>
              </button>
            </li>
          ))}
        </ul>
      </Details>
    </section>
  );
}
