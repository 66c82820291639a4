import { useEffect, useRef, useState } from 'react';
import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import type { FeatureId } from '../../site/document.ts';
import { useApp } from '../../state/store.ts';
import { dayWords } from '../../sun/day-words.ts';
import type { KeptSpot } from '../../windspots/kept-spots.ts';
import { waitingWords } from '../../windspots/score-words.ts';
import { Section } from '../parts/panel-head.tsx';
import { MetersForm } from './meters-form.tsx';

/** What was written down and is still to be read. */
export function WaitingList({ waiting }: { waiting: readonly KeptSpot[] }) {
  const edit = useApp((app) => app.edit);
  const [typing, setTyping] = useState<FeatureId | null>(null);
  const list = useRef<HTMLUListElement>(null);
  const left = useRef<FeatureId | null>(null);
  useEffect(() => {
    // The form that was left is gone: the keyboard goes on from the button that opened it, or from the next.
    if (typing === null && left.current !== null) {
      const own = list.current?.querySelector<HTMLButtonElement>(`[data-spot="${left.current}"]`);
      (own ?? list.current?.querySelector('button'))?.focus();
    }
    left.current = typing;
  }, [typing]);
  return (
    <Section
      title={waiting.length === 1 ? 'Written down, to be read' : `${waiting.length} written down, to be read`}
    >
      <ul ref={list} className="stake-list" data-testid="waiting-spots">
        {waiting.map((kept) => (
          <li key={kept.id}>
            <p>
              <b>{kept.name}</b>, {dayWords(kept.expected.date)}: {waitingWords(kept)}.
            </p>
            {typing === kept.id ? (
              <MetersForm kept={kept} onDone={() => setTyping(null)} />
            ) : (
              <div className="buttons">
                <button type="button" data-spot={kept.id} onClick={() => setTyping(kept.id)}>
                  Type what was read<span className="unseen"> of {kept.name}</span>
                </button>
                <button
                  type="button"
                  onClick={() =>
                    edit(`Take back ${kept.name}`, (document) => deleteFeatures(document, [kept.id]))
                  }
                >
                  Take back<span className="unseen"> {kept.name}</span>
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}
