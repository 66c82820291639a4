import { useEffect, useRef } from 'react';
import { lineWords } from '../../outside/tape-words.ts';
import type { SiteFeature } from '../../site/document.ts';
import { appStore, useApp } from '../../state/store.ts';
import { type WindSpotsAnswer, windSpotsAnswer, writeSpotsDown } from '../../state/wind-spots.ts';
import { dayWords } from '../../sun/day-words.ts';
import { rangeText, SPOT_CAUTIONS, takenForGranted, windWords } from '../../windspots/spot-words.ts';
import { Answer } from '../parts/answer.tsx';
import { PanelHead, Section } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { ShownYear } from '../stakes/shown-year.tsx';
import { useTapeUnit } from '../stakes/use-tape-unit.ts';
import { KeptSpots } from './kept-spots.tsx';
import { SpotList } from './spot-list.tsx';
import { SpotsChoices } from './spots-choices.tsx';
import { WaitingList } from './waiting-list.tsx';
import '../stakes/stakes.css';

type Plan = NonNullable<WindSpotsAnswer['plan']>;

/** Wind spots of the chosen belt: what two hand meters should show, in writing before, and how far the model missed. */
export function WindSpotsPanel(props: { feature: SiteFeature }) {
  const { kind, name } = props.feature.properties;
  const show = useApp((app) => app.show);
  const answer = useApp(windSpotsAnswer);
  const back = useRef<HTMLButtonElement>(null);
  // The button that opened this is gone: the keyboard goes on from here.
  useEffect(() => back.current?.focus({ preventScroll: true }), []);
  if (!answer) return null;
  const { plan, stale, wrong, score, unexplained } = answer;
  return (
    <div className="panel stakes" data-testid="wind-spots">
      <button ref={back} type="button" className="link back" onClick={() => show({ windSpots: null })}>
        Back to {plan?.belt.label ?? name ?? `this ${kind}`}
      </button>
      <PanelHead question="What will two wind meters show behind it?">
        Have it in writing, then hold one meter in the open and one at a spot: the site says how far the model
        missed.
      </PanelHead>
      {score && score.readings.length + score.left.length > 0 ? (
        <KeptSpots score={score} unexplained={unexplained} />
      ) : null}
      {score && score.waiting.length > 0 ? <WaitingList waiting={score.waiting} /> : null}
      {plan ? (
        <Written plan={plan} stale={stale} />
      ) : wrong !== null ? (
        <>
          <Answer figure="No spot" dark>
            {wrong}
          </Answer>
          <Recompute of="spotPlan" />
        </>
      ) : (
        <Answer figure="…">Working out what two meters will show.</Answer>
      )}
      <SpotsChoices answer={answer} />
      {plan ? <Spots plan={plan} stale={stale} /> : null}
    </div>
  );
}

/** Distance at which belts are judged, in heights: the nearest spot is spoken of first. */
const SPOKEN_H = 5;

function Written({ plan, stale }: { plan: Plan; stale: boolean }) {
  const unit = useTapeUnit();
  const spoken = plan.spots.reduce((best, each) =>
    Math.abs(each.distanceH - SPOKEN_H) < Math.abs(best.distanceH - SPOKEN_H) ? each : best,
  );
  const count = plan.spots.length;
  return (
    <Answer figure={rangeText(spoken.expected)} aged={stale ? 'From before the last change.' : null}>
      of the open wind{' '}
      {spoken.words.endsWith('behind') ? `${spoken.words} ${plan.belt.label}` : `at ${spoken.words}`}, on{' '}
      {dayWords(plan.date, true)} in {windWords(plan.wind, unit)}.{' '}
      {count === 1 ? 'One spot' : `${count} spots`}; tape from {lineWords(plan.line, unit)}
    </Answer>
  );
}

/** What is from before the last change is neither written down nor printed. */
function Spots({ plan, stale }: { plan: Plan; stale: boolean }) {
  const show = useApp((app) => app.show);
  const ground = useApp((app) => app.groundDescription);
  const unit = useTapeUnit();
  return (
    <>
      <ShownYear date={plan.date} />
      <div className="buttons">
        <button
          type="button"
          className="main"
          disabled={stale}
          onClick={() => writeSpotsDown(appStore.getState(), plan)}
        >
          Write this down before measuring
        </button>
        <button type="button" disabled={stale} onClick={() => show({ dialog: 'print-wind-spots' })}>
          Print the page to take outside
        </button>
      </div>
      <SpotList plan={plan} />
      {plan.without.length > 0 ? (
        <Section title="Places for which nothing is promised">
          {plan.without.map(({ words, why }) => (
            <p key={words} className="soft">
              {words}: {why}.
            </p>
          ))}
        </Section>
      ) : null}
      <Section title="Before you go out">
        {SPOT_CAUTIONS.map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
        <p className="small">
          {plan.open
            ? `In the open: the other meter at ${plan.open.words}.`
            : 'The model knows no open place in the fields: hold the other meter to windward, ten belt heights and more from anything tall.'}{' '}
          Both at 1.5 m, the same ten minutes, swapped half-way.
        </p>
        {plan.notes.map((note) => (
          <p key={note} className="small">
            {note}
          </p>
        ))}
        {takenForGranted(plan, ground, unit).map((sentence) => (
          <p key={sentence} className="small soft">
            {sentence}
          </p>
        ))}
      </Section>
    </>
  );
}
