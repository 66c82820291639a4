import { useMemo, useRef, useState } from 'react';
import { addCare } from '../../site/actions/add-care.ts';
import { changeCare } from '../../site/actions/change-care.ts';
import { takeAwayCare } from '../../site/actions/take-away-care.ts';
import { careWords } from '../../site/care-words.ts';
import type { SiteFeature } from '../../site/document.ts';
import type { CareRecord } from '../../site/records/care.ts';
import { isWoody, type Woody } from '../../site/woody.ts';
import {
  CARE_YEARS,
  type CareGroup,
  careGroups,
  careWording,
  cautionsOf,
  effectOfCare,
  firstWinter,
  usualCare,
} from '../../state/care.ts';
import { careEffectWords } from '../../state/care-effect-words.ts';
import { plural } from '../../state/format-words.ts';
import { useApp } from '../../state/store.ts';
import { SelectField } from '../parts/select-field.tsx';
import { CareCurve } from './care-curve.tsx';
import { CareForm } from './care-form.tsx';
import './care.css';

/** What will be done to the chosen tree, belt or wood, and what that does to it. */
export function CareSection({ feature }: { readonly feature: SiteFeature }) {
  return isWoody(feature) ? <Care key={feature.id} feature={feature} /> : null;
}

/** What is being thought of; `instead` is the piece of care that it takes the place of. */
interface ThoughtOf {
  readonly care: CareRecord;
  readonly instead: CareRecord | null;
}

function Care({ feature }: { readonly feature: Woody }) {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const year = useApp((app) => app.year);
  const units = useApp((app) => app.unitSystem);
  const edit = useApp((app) => app.edit);
  const say = useApp((app) => app.say);
  const [thoughtOf, setThoughtOf] = useState<ThoughtOf | null>(null);
  const [chosen, setChosen] = useState<CareGroup['value']>('one');
  const adding = useRef<HTMLButtonElement>(null);
  const groups = useMemo(() => careGroups(document, layout, feature), [document, layout, feature]);
  const group = groups.find(({ value }) => value === chosen) ?? groups[0];
  const { ids } = group;
  const wording = careWording(document.site.species, units);
  const words = (care: CareRecord) => careWords(care, wording);
  const listed = feature.properties.care ?? [];

  /** Done: the form goes, and whoever works by keys goes on from its button. */
  const leave = () => {
    setThoughtOf(null);
    requestAnimationFrame(() => adding.current?.focus());
  };
  const to = ids.length > 1 ? ` of ${plural(ids.length, 'plant')}` : '';
  const keep = ({ care, instead }: ThoughtOf) => {
    edit(instead ? `Change the care${to}` : `Add care${to}`, (before) =>
      instead ? changeCare(before, ids, instead, care) : addCare(before, ids, care),
    );
    if (to) say({ tone: 'plain', text: `${words(care)}: ${group.label}.` });
    leave();
  };
  const takeAway = (care: CareRecord) => {
    edit(`Take away care${to}`, (before) => takeAwayCare(before, ids, care));
    leave();
  };

  return (
    <section className="section" aria-label="Care">
      <h2>Care</h2>
      {listed.length === 0 && !thoughtOf ? (
        <p>Nothing is planned: it grows as it likes. Cuts, felling and planting again come here.</p>
      ) : null}
      <Effect feature={feature} thoughtOf={thoughtOf} year={Math.min(year, CARE_YEARS)} />
      {groups.length > 1 ? (
        <SelectField
          label="Care of"
          value={group.value}
          options={groups}
          hint={
            ids.length > 1 && listed.length > 0
              ? 'What is changed or taken away here goes from all of them that have it.'
              : undefined
          }
          onChange={setChosen}
        />
      ) : null}
      {listed.length > 0 ? (
        <ul className="care-list">
          {listed.map((care) => (
            <li key={JSON.stringify(care)}>
              <p>{words(care)}</p>
              {cautionsOf(document, feature, care).map((caution) => (
                <p key={caution} className="caution">
                  {caution}
                </p>
              ))}
              <div className="buttons">
                <button
                  type="button"
                  aria-label={`Change: ${words(care)}`}
                  aria-pressed={thoughtOf?.instead === care}
                  onClick={() => setThoughtOf({ care, instead: care })}
                >
                  Change
                </button>
                <button type="button" aria-label={`Take away: ${words(care)}`} onClick={() => takeAway(care)}>
                  Take away
                </button>
              </div>
            </li>
          ))}
        </ul>
      ) : null}
      {thoughtOf ? (
        <CareForm
          key={JSON.stringify(thoughtOf.instead)}
          feature={feature}
          care={thoughtOf.care}
          keep={thoughtOf.instead ? `Change it${forAll(ids.length)}` : `Add it${forAll(ids.length)}`}
          onChange={(care) => setThoughtOf({ ...thoughtOf, care })}
          onKeep={() => keep(thoughtOf)}
          onLeave={leave}
        />
      ) : (
        <div className="buttons">
          <button
            type="button"
            ref={adding}
            onClick={() =>
              setThoughtOf({
                care: usualCare(document, feature, 'pollard', firstWinter(document, feature, year)),
                instead: null,
              })
            }
          >
            Add care
          </button>
        </div>
      )}
    </section>
  );
}

const forAll = (count: number): string => (count > 1 ? ` for all ${count}` : '');

/** Height over the years with and without care, in words and drawn; with what is thought of in it. */
function Effect(props: {
  readonly feature: Woody;
  readonly thoughtOf: ThoughtOf | null;
  readonly year: number;
}) {
  const { feature, thoughtOf, year } = props;
  const document = useApp((app) => app.document);
  const units = useApp((app) => app.unitSystem);
  const effect = useMemo(
    () => effectOfCare(document, feature, thoughtOf?.care ?? null, thoughtOf?.instead ?? null),
    [document, feature, thoughtOf],
  );
  if (!effect) return null;
  const care = [...(feature.properties.care ?? []), ...(thoughtOf ? [thoughtOf.care] : [])].filter(
    (each) => each !== thoughtOf?.instead || each === thoughtOf?.care,
  );
  const { length } = careWording(document.site.species, units);
  return (
    <figure className="care-figure">
      <p aria-live="polite">
        {careEffectWords(effect, care, { year, baseYear: document.site.baseYear, length })}
      </p>
      <CareCurve effect={effect} year={year} />
      <figcaption className="small soft">
        Its height by years after planting the garden: the line with this care, the wash from slow to fast
        growth; dashed without any.{thoughtOf ? ' With what is being entered.' : ''}
      </figcaption>
    </figure>
  );
}
