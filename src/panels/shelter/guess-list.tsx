import { useApp } from '../../state/store.ts';
import { CHAINED_BELTS_SAYS, SHELTER_GUESSES, USUAL_SHELTER_OPTIONS } from '../../wind/shelter-guesses.ts';
import { Details } from '../parts/panel-head.tsx';

/** Every guess of the shelter engine, each with a tick that leaves it out, and the other rule for several belts. */
export function GuessList() {
  const options = useApp((app) => app.shelterOptions);
  const show = useApp((app) => app.show);
  const out = SHELTER_GUESSES.filter(({ key }) => !options[key]).length;
  const changed = out > 0 || options.chainedBelts;
  const ticked = (key: keyof typeof options, on: boolean) =>
    show({ shelterOptions: { ...options, [key]: on } });
  return (
    <Details title={out > 0 ? `Guesses, ${out} left out` : 'Guesses'}>
      <p>
        No published rule covers all of this. Leave out a guess and the map shows what rests on it.
        {changed ? (
          <>
            {' '}
            <button type="button" onClick={() => show({ shelterOptions: USUAL_SHELTER_OPTIONS })}>
              All as usual
            </button>
          </>
        ) : null}
      </p>
      {SHELTER_GUESSES.map(({ key, name, says }) => (
        <Tick key={key} label={name} says={says} on={options[key]} set={(on) => ticked(key, on)} />
      ))}
      <Tick
        label="Multiply several belts"
        says={CHAINED_BELTS_SAYS}
        on={options.chainedBelts}
        set={(on) => ticked('chainedBelts', on)}
      />
    </Details>
  );
}

function Tick(props: { label: string; says: string; on: boolean; set(on: boolean): void }) {
  return (
    <div>
      <label className="tick">
        <input type="checkbox" checked={props.on} onChange={(event) => props.set(event.target.checked)} />
        {props.label}
      </label>
      <p className="field-hint">{props.says}</p>
    </div>
  );
}
