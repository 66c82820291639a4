import { coldCaveat } from '../../choose/cold-words.ts';
import { coldRanksFound } from '../../state/cold-air-found.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import { Recompute } from '../parts/recompute.tsx';
import './cold-fields.css';

/** Which field cold air gathers on, in plain words, the most first. */
export function ColdFields() {
  const ranks = useApp(coldRanksFound);
  const { status, stale } = useApp((app) => app.coldAir);
  const picture = useApp((app) => app.picture);
  const year = useApp((app) => app.year);
  const terrainCellM = useApp((app) => app.terrain?.cellM ?? null);
  const show = useApp((app) => app.show);
  if (ranks.length === 0 && status !== 'failed' && status !== 'cancelled') return null;
  return (
    <Details title="Where cold air lies on a still night">
      {ranks.length > 0 ? (
        <ol className="cold-fields">
          {ranks.map(({ id, sentence }) => (
            <li key={id}>{sentence}</li>
          ))}
        </ol>
      ) : null}
      <Recompute of="coldAir" />
      <p className="soft small">
        With what stands in year {year}
        {stale ? ', from before the last change' : ''}. {coldCaveat(terrainCellM)}
      </p>
      <div className="buttons">
        <button
          type="button"
          aria-pressed={picture === 'cold-air'}
          onClick={() => show({ picture: picture === 'cold-air' ? 'plain' : 'cold-air' })}
        >
          Show it on the map
        </button>
      </div>
    </Details>
  );
}
