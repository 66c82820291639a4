import { useEffect, useRef, useState } from 'react';
import { offsetWords, twoTapesWords } from '../../outside/tape-words.ts';
import type { Stake, StakePlan } from '../../stakes/stake-plan.ts';
import { blurWords } from '../../stakes/stake-words.ts';
import { ReadingForm } from './reading-form.tsx';
import { useTapeUnit } from './use-tape-unit.ts';

/** The stakes by the clock, each with its offsets and room to type back what was seen. */
export function StakeList(props: { plan: StakePlan }) {
  const { plan } = props;
  const [typing, setTyping] = useState<string | null>(null);
  const list = useRef<HTMLOListElement>(null);
  const left = useRef<string | null>(null);
  useEffect(() => {
    // The form that was left is gone: the keyboard goes on from the button that opened it.
    if (typing === null && left.current !== null)
      list.current?.querySelector<HTMLButtonElement>(`[data-time="${left.current}"]`)?.focus();
    left.current = typing;
  }, [typing]);
  return (
    <ol ref={list} className="stake-list">
      {plan.stakes.map((stake) => (
        <li key={stake.time}>
          <StakeWords plan={plan} stake={stake} />
          {typing === stake.time ? (
            <ReadingForm plan={plan} stake={stake} onDone={() => setTyping(null)} />
          ) : (
            <button type="button" data-time={stake.time} onClick={() => setTyping(stake.time)}>
              Type what was seen<span className="unseen"> at {stake.time}</span>
            </button>
          )}
        </li>
      ))}
    </ol>
  );
}

function StakeWords({ plan, stake }: { plan: StakePlan; stake: Stake }) {
  const unit = useTapeUnit();
  return (
    <>
      <h3>
        <span className="stake-number">{stake.number}</span> {stake.time}
      </h3>
      <p>{offsetWords(stake, plan.line, unit)}</p>
      <p className="small soft">
        Check: {twoTapesWords(stake, plan.line, unit)}. {sentence(blurWords(stake, unit))}
      </p>
      {stake.cautions.map((caution) => (
        <p key={caution} className="caution">
          {sentence(caution)}
        </p>
      ))}
    </>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
