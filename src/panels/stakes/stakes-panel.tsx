import { useEffect, useRef } from 'react';
import { lineWords, roughText } from '../../outside/tape-words.ts';
import type { SiteFeature } from '../../site/document.ts';
import { castWords } from '../../stakes/stake-words.ts';
import { stakesAnswer } from '../../state/shadow-stakes.ts';
import { useApp } from '../../state/store.ts';
import { dayWords } from '../../sun/day-words.ts';
import { Answer } from '../parts/answer.tsx';
import { PanelHead, Section } from '../parts/panel-head.tsx';
import { ReadingsKept } from './readings-kept.tsx';
import { ShownYear } from './shown-year.tsx';
import { StakeList } from './stake-list.tsx';
import { StakesChoices } from './stakes-choices.tsx';
import { useTapeUnit } from './use-tape-unit.ts';
import './stakes.css';

/** Shadow stakes of the chosen thing: where its shadow's tip will fall, and how far the model missed what was seen. */
export function StakesPanel(props: { feature: SiteFeature }) {
  const { kind, name } = props.feature.properties;
  const show = useApp((app) => app.show);
  const answer = useApp(stakesAnswer);
  const unit = useTapeUnit();
  const back = useRef<HTMLButtonElement>(null);
  // The button that opened this is gone: the keyboard goes on from here.
  useEffect(() => back.current?.focus({ preventScroll: true }), []);
  if (!answer) return null;
  const { plan, wrong, score } = answer;
  return (
    <div className="panel stakes" data-testid="stakes">
      <button ref={back} type="button" className="link back" onClick={() => show({ stakes: null })}>
        Back to {plan?.thing.label ?? name ?? `this ${kind}`}
      </button>
      <PanelHead question="Where will its shadow fall?">
        Put a stake where the tip should be, see where it is, and the site says how far the model missed.
      </PanelHead>
      {score ? <ReadingsKept score={score} /> : null}
      {plan ? (
        <Answer figure={plan.stakes.length === 1 ? '1 stake' : `${plan.stakes.length} stakes`}>
          for the tip of {plan.thing.label}’s shadow on {dayWords(plan.date, true)}. Tape from{' '}
          {lineWords(plan.line, unit)}
        </Answer>
      ) : (
        <Answer figure="No stake" dark>
          {wrong}
        </Answer>
      )}
      <StakesChoices answer={answer} />
      {plan ? <ShownYear date={plan.date} /> : null}
      {plan ? (
        <>
          <div className="buttons">
            <button type="button" className="main" onClick={() => show({ dialog: 'print-stakes' })}>
              Print the page to take outside
            </button>
          </div>
          <StakeList plan={plan} />
          {plan.without.length > 0 ? (
            <Section title="Times without a stake">
              {plan.without.map(({ time, why }) => (
                <p key={time} className="soft">
                  {time}: {why}.
                </p>
              ))}
            </Section>
          ) : null}
          <Section title="Before you go out">
            <p className="caution">
              Never look at the sun, not even for a moment: watch the ground. Mind ditches, edges, live fences
              and animals; near overhead lines raise nothing long.
            </p>
            {plan.notes.map((note) => (
              <p key={note} className="small">
                {note}
              </p>
            ))}
            <p className="small soft">
              {plan.thing.label} is taken as {roughText(plan.thing.heightM, unit)} tall on that day; the tip
              is cast by {castWords(plan.thing, plan.alongM)}. Lengths are as a tight tape lies on the ground.
            </p>
          </Section>
        </>
      ) : null}
    </div>
  );
}
