import { useEffect, useState } from 'react';
import { readOutAt } from '../state/read-out.ts';
import { appStore, useApp } from '../state/store.ts';
import { useHandState } from './drawing/hand-store.ts';
import { useHandRows } from './read-out.tsx';

/** A press held down must not be read out step by step. */
const REST_MS = 350;

const inWords = (rows: readonly { readonly label: string; readonly value: string }[]): string =>
  rows.map(({ label, value }) => `${label} ${value}`).join(', ');

/** Says where the cross is and what has been chosen to a person who cannot see the map. */
export function Spoken() {
  const pointer = useApp((app) => app.pointer);
  const mousePlace = useHandState((hand) => hand.mousePlace);
  const spoken = useHandState((hand) => hand.spoken);
  const handRows = useHandRows();
  const byKeys = pointer !== null && pointer !== mousePlace;
  const measured = byKeys ? inWords(handRows) : '';
  const [said, setSaid] = useState('');

  useEffect(() => setSaid(spoken), [spoken]);
  useEffect(() => {
    if (!byKeys || !pointer) return;
    const timer = setTimeout(() => {
      const known = readOutAt(appStore.getState(), pointer);
      const place = known ? `${known.title}. ${inWords(known.rows)}` : '';
      setSaid([measured, place].filter(Boolean).join('. '));
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [byKeys, pointer, measured]);

  return (
    <div className="map-unseen" aria-live="polite" data-testid="map-spoken">
      {said}
    </div>
  );
}
