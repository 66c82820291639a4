import { useRef } from 'react';
import { findSpecies } from '../../plants/find-species.ts';
import { useApp } from '../../state/store.ts';
import { SpeciesPicker } from '../parts/species-picker.tsx';
import './several-species.css';

/** A list of species of the catalogue: one more is found by the search, each can be taken out. */
export function SeveralSpecies(props: {
  label: string;
  /** Botanical names. */
  values: readonly string[];
  hint: string;
  onChange: (botanicalNames: string[]) => void;
}) {
  const { label, values } = props;
  const siteSpecies = useApp((app) => app.document.site.species);
  const whole = useRef<HTMLDivElement>(null);
  const takeOut = (name: string) => {
    props.onChange(values.filter((other) => other !== name));
    // Its button goes with it: the keyboard goes on from the one that asks for a species.
    whole.current?.querySelector('button')?.focus();
  };
  return (
    <div ref={whole}>
      <SpeciesPicker
        label={label}
        value={null}
        asked={values.length > 0 ? 'another species' : 'nothing else'}
        onChange={(name) => {
          if (name !== null && !values.includes(name)) props.onChange([...values, name]);
        }}
      />
      {values.length > 0 ? (
        <ul className="several-species" aria-label={label}>
          {values.map((name) => {
            const species = findSpecies(name, siteSpecies);
            return (
              <li key={name}>
                <span>
                  {species
                    ? `${species.commonName.charAt(0).toUpperCase()}${species.commonName.slice(1)} `
                    : ''}
                  <i className="soft">{name}</i>
                </span>
                <button
                  type="button"
                  aria-label={`Take out ${species?.commonName ?? name}`}
                  onClick={() => takeOut(name)}
                >
                  Take out
                </button>
              </li>
            );
          })}
        </ul>
      ) : null}
      <p className="field-hint">{props.hint}</p>
    </div>
  );
}
