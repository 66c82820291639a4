import { useState } from 'react';
import { choosingOf } from '../../choose/choice.ts';
import { matterWords } from '../../choose/measure-words.ts';
import { CHOOSING_MEASURES, type Matter } from '../../site/records/choosing.ts';
import { setChoosing } from '../../state/fields-compared.ts';
import { appStore, useApp } from '../../state/store.ts';
import { SelectField } from '../parts/select-field.tsx';
import { allMatters, keyOfMatter } from './matters.ts';

const setOrder = (label: string, order: readonly Matter[]) =>
  setChoosing(appStore.getState(), label, { order: [...order] });

/** What matters, to be dragged up and down, or moved by its buttons. */
export function OrderList() {
  const { order } = choosingOf(useApp((app) => app.document));
  const [held, setHeld] = useState<number | null>(null);
  const [over, setOver] = useState<number | null>(null);
  const move = (from: number, to: number) => {
    if (from === to || to < 0 || to >= order.length) return;
    const next = order.filter((_, k) => k !== from);
    next.splice(to, 0, order[from]);
    setOrder('Change the order of what matters', next);
  };
  const rest = allMatters(CHOOSING_MEASURES).filter(
    (matter) => !order.some((each) => keyOfMatter(each) === keyOfMatter(matter)),
  );
  return (
    <>
      <ol className="order-list">
        {order.map((matter, k) => (
          <li
            key={keyOfMatter(matter)}
            className="order-held"
            draggable
            data-over={over === k && held !== k ? true : undefined}
            onDragStart={(event) => {
              event.dataTransfer.effectAllowed = 'move';
              setHeld(k);
            }}
            onDragOver={(event) => {
              if (held === null) return;
              event.preventDefault();
              setOver(k);
            }}
            onDrop={(event) => {
              event.preventDefault();
              if (held !== null) move(held, k);
            }}
            onDragEnd={() => {
              setHeld(null);
              setOver(null);
            }}
          >
            <span>
              {k + 1} {matterWords(matter)}
            </span>
            <span className="order-buttons">
              <button
                type="button"
                aria-label={`Up: ${matterWords(matter)}`}
                title="Up"
                disabled={k === 0}
                onClick={() => move(k, k - 1)}
              >
                ↑
              </button>
              <button
                type="button"
                aria-label={`Down: ${matterWords(matter)}`}
                title="Down"
                disabled={k === order.length - 1}
                onClick={() => move(k, k + 1)}
              >
                ↓
              </button>
              <button
                type="button"
                aria-label={`Leave out: ${matterWords(matter)}`}
                title="Leave out"
                onClick={() =>
                  setOrder(
                    'Leave out what matters',
                    order.filter((_, other) => other !== k),
                  )
                }
              >
                ×
              </button>
            </span>
          </li>
        ))}
      </ol>
      <SelectField
        label="This matters as well"
        value=""
        options={[
          { value: '', label: 'choose…' },
          ...rest.map((matter) => ({ value: keyOfMatter(matter), label: matterWords(matter) })),
        ]}
        onChange={(key) => {
          const added = rest.find((matter) => keyOfMatter(matter) === key);
          if (added) setOrder('Add what matters', [...order, added]);
        }}
      />
    </>
  );
}
