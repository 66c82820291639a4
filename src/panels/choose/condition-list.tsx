import { useState } from 'react';
import { choosingOf } from '../../choose/choice.ts';
import { knockOutWords } from '../../choose/knock-out-words.ts';
import { USUAL_KNOCK_OUTS } from '../../choose/knock-outs.ts';
import type { MeasureUnit } from '../../choose/measure-types.ts';
import { type ChooseUnits, matterWords } from '../../choose/measure-words.ts';
import { measureOf } from '../../choose/measures.ts';
import { CHOOSING_MEASURES, type KnockOut } from '../../site/records/choosing.ts';
import { setChoosing } from '../../state/fields-compared.ts';
import { landFrom, landUnit, lengthFrom, lengthUnit } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { appStore, useApp } from '../../state/store.ts';
import { NumberField } from '../parts/number-field.tsx';
import { Details } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { allMatters, keyOfMatter } from './matters.ts';

/** The unit in which a limit is typed, and how many of the file's own one of them is. */
function typed(unit: MeasureUnit, units: UnitSystem): { readonly unit: string; readonly factor: number } {
  switch (unit) {
    case 'm2':
      return { unit: landUnit(units), factor: landFrom(1, units) };
    case 'm':
      return { unit: lengthUnit(units), factor: lengthFrom(1, units) };
    case 'share':
      return { unit: '%', factor: 0.01 };
    case 'hours':
      return { unit: 'h', factor: 1 };
    case 'deg':
    case 'bearing':
      return { unit: '°', factor: 1 };
    case 'year':
      return { unit: 'years', factor: 1 };
    case 'index':
      return { unit: '', factor: 1 };
  }
}
const MATTERS = allMatters(CHOOSING_MEASURES);
const same = (a: KnockOut, b: KnockOut): boolean =>
  keyOfMatter(a) === keyOfMatter(b) && a.atLeast === b.atLeast && a.atMost === b.atMost;

const setKnockOuts = (label: string, knockOuts: readonly KnockOut[]) =>
  setChoosing(appStore.getState(), label, { knockOuts: [...knockOuts] });

/** What knocks a field out: taken away, added as it is often asked, or put together. */
export function ConditionList({ units }: { readonly units: ChooseUnits }) {
  const { knockOuts } = choosingOf(useApp((app) => app.document));
  const add = (condition: KnockOut) => setKnockOuts('Ask more of a field', [...knockOuts, condition]);
  const usual = USUAL_KNOCK_OUTS.filter((each) => !knockOuts.some((one) => same(one, each)));
  return (
    <>
      <ul className="order-list">
        {knockOuts.map((condition) => (
          <li key={`${keyOfMatter(condition)} ${condition.atLeast} ${condition.atMost}`}>
            <span>{knockOutWords(condition, units)}</span>
            <button
              type="button"
              aria-label={`Ask no longer: ${knockOutWords(condition, units)}`}
              onClick={() =>
                setKnockOuts(
                  'Ask less of a field',
                  knockOuts.filter((each) => each !== condition),
                )
              }
            >
              Ask no longer
            </button>
          </li>
        ))}
      </ul>
      {usual.length > 0 ? (
        <div className="buttons">
          {usual.map((condition) => (
            <button type="button" key={keyOfMatter(condition)} onClick={() => add(condition)}>
              Ask: {knockOutWords(condition, units)}
            </button>
          ))}
        </div>
      ) : null}
      <Details title="Ask something else">
        <OwnCondition onAdd={add} />
      </Details>
    </>
  );
}

function OwnCondition({ onAdd }: { readonly onAdd: (condition: KnockOut) => void }) {
  const [key, setKey] = useState(keyOfMatter(MATTERS[0]));
  const [side, setSide] = useState<'atLeast' | 'atMost'>('atLeast');
  const [limit, setLimit] = useState<number | null>(null);
  const matter = MATTERS.find((each) => keyOfMatter(each) === key) ?? MATTERS[0];
  const units = useApp((app) => app.unitSystem);
  const { unit, factor } = typed(measureOf(matter.measure).unit, units);
  return (
    <div className="own-condition">
      <SelectField
        label="Of a field"
        value={key}
        options={MATTERS.map((each) => ({ value: keyOfMatter(each), label: matterWords(each) }))}
        onChange={setKey}
      />
      <SelectField
        label="it must be"
        value={side}
        options={[
          { value: 'atLeast', label: 'at least' },
          { value: 'atMost', label: 'at most' },
        ]}
        onChange={setSide}
      />
      <NumberField label="this" value={limit} unit={unit} min={0} onChange={setLimit} />
      <button
        type="button"
        disabled={limit === null}
        onClick={() => {
          if (limit !== null) onAdd({ ...matter, [side]: limit * factor });
          setLimit(null);
        }}
      >
        Ask it
      </button>
    </div>
  );
}
