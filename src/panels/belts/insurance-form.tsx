import { useState } from 'react';
import { insuranceSentence } from '../../belts/belt-words.ts';
import type { Insurer } from '../../belts/insurance-belt.ts';
import { findSpecies } from '../../plants/find-species.ts';
import type { FeatureId } from '../../site/document.ts';
import { plannedBeltsOf, plantInsurance } from '../../state/insure-edge.ts';
import { appStore, useApp } from '../../state/store.ts';
import { NumberField } from '../parts/number-field.tsx';
import { Recompute } from '../parts/recompute.tsx';
import { SelectField } from '../parts/select-field.tsx';

const NEW = 'new';
const USUAL_FELLED_IN_YEAR = 15;

/** Asks when the edge may be felled, what must be kept and by which belt, and says the latest year to plant it. */
export function InsuranceForm({ edgeId }: { readonly edgeId: FeatureId }) {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const species = useApp((app) => app.brush.beltSpecies) ?? 'Alnus cordata';
  const wish = useApp((app) => (app.insuranceWish?.edgeId === edgeId ? app.insuranceWish : null));
  const insurance = useApp((app) => app.insurance);
  const felledFrom = useApp((app) => app.felled?.fromYear ?? 0);
  const show = useApp((app) => app.show);
  const [felledInYear, setFelledInYear] = useState(felledFrom > 0 ? felledFrom : USUAL_FELLED_IN_YEAR);
  const [keepPercent, setKeepPercent] = useState<number | null>(null);
  const planned = plannedBeltsOf(document, layout);
  const [by, setBy] = useState<string>(NEW);
  const chosen = planned.find(({ id }) => String(id) === by);
  const insurer: Insurer = chosen ? { beltId: chosen.id } : { species };
  const name = findSpecies(species, document.site.species)?.commonName ?? species;
  const working = wish !== null && insurance.status === 'computing';
  const answer = wish !== null && insurance.result?.wish === wish ? insurance.result : null;
  return (
    <>
      <div className="pair">
        <NumberField
          label="Felled in year"
          digits={0}
          min={1}
          max={60}
          value={felledInYear}
          onChange={(value) => setFelledInYear(Math.round(value))}
        />
        <NumberField
          label="Keep the wind cut by"
          unit="%"
          digits={0}
          min={1}
          max={95}
          value={keepPercent}
          onChange={setKeepPercent}
          onClear={() => setKeepPercent(null)}
        />
      </div>
      <p className="field-hint">
        The mean over the field in the growing season; empty: three quarters of what it has with the edge.
      </p>
      <SelectField
        label="Insured by"
        value={by}
        options={[
          { value: NEW, label: `a new belt along it, ${name}` },
          ...planned.map(({ id, label }) => ({ value: String(id), label })),
        ]}
        hint="The species of a new belt is that of “What is drawn” in Shelter."
        onChange={setBy}
      />
      <div className="buttons">
        {working ? (
          <button type="button" onClick={() => show({ insuranceWish: null })}>
            Stop, {Math.round(100 * insurance.progress)} %
          </button>
        ) : (
          <button
            type="button"
            onClick={() =>
              show({
                insuranceWish: {
                  edgeId,
                  felledInYear,
                  leastCutShare: keepPercent === null ? null : keepPercent / 100,
                  insurer,
                },
              })
            }
          >
            Find the latest year to plant
          </button>
        )}
      </div>
      {wish && insurance.status === 'failed' ? <p className="warn">{insurance.message}</p> : null}
      {wish ? <Recompute of="insurance" /> : null}
      {answer ? (
        <>
          <p aria-live="polite">
            {insuranceSentence(answer, (year) => document.site.baseYear + year)}
            {insurance.stale ? ' From before the last change.' : ''}
          </p>
          {answer.latest.usual !== null && !answer.needless ? (
            <div className="buttons">
              <button
                type="button"
                onClick={() => plantInsurance(appStore.getState(), answer.wish, answer.latest.usual ?? 0)}
              >
                {'beltId' in answer.wish.insurer ? 'Plant it' : 'Draw it, planted'} in{' '}
                {document.site.baseYear + answer.latest.usual}
              </button>
            </div>
          ) : null}
        </>
      ) : null}
    </>
  );
}
