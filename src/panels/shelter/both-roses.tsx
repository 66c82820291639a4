import type { windWith } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';
import { WindRose } from './wind-rose.tsx';

/** Both seasons side by side, or the sentence that says why there are none. */
export function BothRoses(props: { answer: ReturnType<typeof windWith> }) {
  const { answer } = props;
  const unitSystem = useApp((app) => app.unitSystem);
  if ('wrong' in answer) return <p className="warn">{answer.wrong}</p>;
  const { growing, rest } = answer.wind.facts;
  return (
    <div className="both-roses">
      <WindRose caption="Growing season" season={growing} unitSystem={unitSystem} />
      <WindRose caption="Rest of the year" season={rest} unitSystem={unitSystem} />
    </div>
  );
}
