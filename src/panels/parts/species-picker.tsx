import { useId, useMemo, useRef, useState } from 'react';
import { findSpecies, speciesList } from '../../plants/find-species.ts';
import { plainName } from '../../plants/plain-name.ts';
import { ROLES, type Species } from '../../plants/species.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import './species-picker.css';

/** A species of the catalogue, found by any part of its common or botanical name, or by its use. */
export function SpeciesPicker(props: {
  label: string;
  value: string | null;
  /** Words for having none, where none may be chosen. */
  none?: string;
  /** Words for what is asked for while there is none. */
  asked?: string;
  onChange: (botanicalName: string | null) => void;
}) {
  const id = useId();
  const siteSpecies = useApp((app) => app.document.site.species);
  const units = useApp((app) => app.unitSystem);
  const [open, setOpen] = useState(false);
  const [search, setSearch] = useState('');
  const found = useMemo(() => matching(speciesList(siteSpecies).all, search), [siteSpecies, search]);
  const chosen = findSpecies(props.value, siteSpecies);
  const toggle = useRef<HTMLButtonElement>(null);
  // The search goes with the list: the keyboard goes on from the button that opened it.
  const close = () => {
    setOpen(false);
    setSearch('');
    toggle.current?.focus();
  };
  const choose = (name: string | null) => {
    close();
    if (name !== props.value) props.onChange(name);
  };
  return (
    <div>
      <span className="field-label" id={`${id}-label`}>
        {props.label}
      </span>
      <button
        ref={toggle}
        type="button"
        className="chosen-species"
        aria-expanded={open}
        aria-labelledby={`${id}-label ${id}-chosen ${id}-do`}
        onClick={() => setOpen(!open)}
      >
        <span id={`${id}-chosen`}>
          {chosen ? capital(chosen.commonName) : (props.value ?? props.none ?? props.asked ?? 'none')}{' '}
          {chosen ? <i className="soft">{chosen.botanicalName}</i> : null}
        </span>{' '}
        <span className="do" id={`${id}-do`}>
          {open ? 'close' : props.asked ? 'choose' : 'change'}
        </span>
      </button>
      {open ? (
        <div className="section species-search">
          <input
            type="search"
            aria-label={`Search: ${props.label}`}
            placeholder="walnut, Alnus, nut, nitrogen…"
            value={search}
            // The person has just asked for the list: typing should go there.
            ref={focusOnce}
            onChange={(event) => setSearch(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' && found.length > 0) {
                // Or the same key would press the button that the keyboard goes to.
                event.preventDefault();
                choose(found[0].botanicalName);
              }
              if (event.key === 'Escape') close();
            }}
          />
          <div className="species-list">
            {props.none ? (
              <button type="button" aria-pressed={props.value === null} onClick={() => choose(null)}>
                {props.none}
              </button>
            ) : null}
            {found.map((species) => (
              <button
                key={species.botanicalName}
                type="button"
                aria-pressed={species === chosen}
                onClick={() => choose(species.botanicalName)}
              >
                {capital(species.commonName)} <i>{species.botanicalName}</i>
                <span className="facts">
                  {ROLES[species.role]}, to {formatLength(species.curve.maxHeightM, units)} tall,{' '}
                  {formatLength(species.spread.matureSpreadM, units)} wide
                  {species.fixesNitrogen ? ', fixes nitrogen' : ''}
                </span>
              </button>
            ))}
            {found.length === 0 ? <p className="field-hint">Nothing of that name in the catalogue.</p> : null}
          </div>
        </div>
      ) : null}
    </div>
  );
}

/** Stable, so that the search is focused when it appears and not on every letter. */
const focusOnce = (input: HTMLInputElement | null): void => input?.focus();

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Names that begin with the search first, then those that hold it. */
function matching(all: readonly Species[], search: string): readonly Species[] {
  const wanted = plainName(search);
  if (wanted === '') return all.toSorted((a, b) => a.commonName.localeCompare(b.commonName));
  const rank = (species: Species): number => {
    const names = [species.commonName, species.botanicalName, ...species.synonyms].map(plainName);
    if (names.some((name) => name.startsWith(wanted))) return 0;
    if (names.some((name) => name.includes(wanted))) return 1;
    const uses = `${ROLES[species.role]} ${species.fixesNitrogen ? 'nitrogen' : ''} ${species.lightNeed}`;
    return uses.includes(wanted) ? 2 : 3;
  };
  return all
    .map((species) => ({ species, order: rank(species) }))
    .filter(({ order }) => order < 3)
    .sort((a, b) => a.order - b.order || a.species.commonName.localeCompare(b.species.commonName))
    .map(({ species }) => species);
}
