import { useState } from 'react';
import { moveFeatures } from '../../site/actions/move-feature.ts';
import type { SiteFeature } from '../../site/document.ts';
import { lengthFrom, lengthUnit } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { parseNumber } from '../parts/parse-number.ts';

/** Moves the chosen thing by typed lengths to the true east and north. */
export function MoveByMetres(props: { feature: SiteFeature }) {
  const units = useApp((app) => app.unitSystem);
  const edit = useApp((app) => app.edit);
  const [east, setEast] = useState('0');
  const [north, setNorth] = useState('0');
  const eastM = parseNumber(east);
  const northM = parseNumber(north);
  const ready = eastM !== null && northM !== null && (eastM !== 0 || northM !== 0);
  const move = () => {
    if (!ready) return;
    edit(`Move the ${props.feature.properties.kind}`, (document) =>
      moveFeatures(document, [props.feature.id], lengthFrom(eastM, units), lengthFrom(northM, units)),
    );
  };
  const unit = units === 'metric' ? 'metres' : 'feet';
  return (
    <form
      className="section"
      onSubmit={(event) => {
        event.preventDefault();
        move();
      }}
    >
      <div className="pair">
        <label>
          <span className="field-label">To the east, {lengthUnit(units)}</span>
          <input
            type="text"
            inputMode="decimal"
            value={east}
            onChange={(event) => setEast(event.target.value)}
          />
        </label>
        <label>
          <span className="field-label">To the north, {lengthUnit(units)}</span>
          <input
            type="text"
            inputMode="decimal"
            value={north}
            onChange={(event) => setNorth(event.target.value)}
          />
        </label>
      </div>
      <p className="field-hint">In {unit}; below zero moves it west or south.</p>
      <div className="buttons">
        <button type="submit" disabled={!ready}>
          Move it
        </button>
      </div>
    </form>
  );
}
