import { roughText } from '../../outside/tape-words.ts';
import { appStore, useApp } from '../../state/store.ts';
import { acceptBeltHeight, acceptPorosity, beltFindings } from '../../state/wind-spots.ts';
import { dayWords } from '../../sun/day-words.ts';
import { missFigure, readingWords, type ShownScore, scoreSentences } from '../../windspots/score-words.ts';
import { percent } from '../../windspots/spot-words.ts';
import { Answer } from '../parts/answer.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { KeptList } from '../stakes/kept-list.tsx';
import { useTapeUnit } from '../stakes/use-tape-unit.ts';

/** How far the model missed, what that fits, and the readings one by one. */
export function KeptSpots({ score, unexplained }: { score: ShownScore; unexplained: string | null }) {
  const of = useApp((app) => app.windSpots?.of ?? null);
  const unit = useTapeUnit();
  const { heightM, porosity } = beltFindings(score);
  const readings = [
    ...score.readings.map((scored) => ({ kept: scored.kept, words: readingWords(scored, unit) })),
    ...score.left.map(({ kept, why }) => ({ kept, words: `not scored: ${why}` })),
  ].map(({ kept: { id, name, reading }, words }) => ({
    id,
    title: reading ? `${dayWords(reading.date)}, ${name}` : name,
    words,
    removes: name,
    edit: 'Remove a reading of the wind',
  }));
  return (
    <section className="section" aria-label="Readings" data-testid="wind-score">
      <Answer
        figure={missFigure(score)}
        dark={score.readings.some(({ within }) => within === 'neither')}
        aged={score.readings.length > 0 ? unexplained : null}
      >
        {scoreSentences(score, unit).join(' ')}
      </Answer>
      <Recompute of="spotScore" />
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
      <KeptList readings={readings} />
    </section>
  );
}
