import type { Species } from '../../plants/species.ts';
import type { PropertyField } from '../../site/records/property-field.ts';
import { useApp } from '../../state/store.ts';
import { LengthField, ShareField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { SpeciesPicker } from '../parts/species-picker.tsx';
import { TextField } from '../parts/text-field.tsx';
import { SeveralSpecies } from './several-species.tsx';

const NONE = '';

/** One property as its field describes it; emptied, the property goes and the usual value counts again. */
export function FieldEditor(props: {
  field: PropertyField;
  properties: Readonly<Record<string, unknown>>;
  species: Species | null;
  onChange: (key: string, value: unknown) => void;
}) {
  const { field, properties, species } = props;
  const value = properties[field.key];
  const set = (next: unknown) => props.onChange(field.key, next);
  const clear = () => set(undefined);
  const number = typeof value === 'number' ? value : null;
  const text = typeof value === 'string' ? value : '';
  switch (field.unit) {
    case 'm':
      return (
        <LengthField
          label={field.label}
          valueM={number}
          minM={field.min}
          maxM={field.max}
          hint={field.help}
          onChange={set}
          onClear={clear}
        />
      );
    case 'share':
      return (
        <ShareField label={field.label} value={number} hint={field.help} onChange={set} onClear={clear} />
      );
    case 'year':
    case 'count':
    case 'number':
    case 'm2/m3':
      return (
        <NumberField
          label={field.label}
          value={number}
          unit={field.unit === 'm2/m3' ? 'm² in a m³' : undefined}
          digits={field.unit === 'year' || field.unit === 'count' ? 0 : 2}
          min={field.min}
          max={field.max}
          hint={field.help}
          onChange={(next) => set(field.unit === 'year' || field.unit === 'count' ? Math.round(next) : next)}
          onClear={clear}
        />
      );
    case 'choice':
      return (
        <SelectField
          label={field.label}
          value={text}
          options={[{ value: NONE, label: 'as usual' }, ...(field.choices ?? [])]}
          hint={field.help}
          onChange={(next) => set(next === NONE ? undefined : next)}
        />
      );
    case 'yesNo':
      return (
        <div>
          <label className="tick">
            <input
              type="checkbox"
              checked={value === true}
              onChange={(event) => set(event.target.checked || undefined)}
            />
            {field.label}
          </label>
          <p className="field-hint">{field.help}</p>
        </div>
      );
    case 'botanicalName':
      return (
        <div>
          <SpeciesPicker
            label={field.label}
            value={text || null}
            none="none"
            onChange={(name) => set(name ?? undefined)}
          />
          <p className="field-hint">{field.help}</p>
        </div>
      );
    case 'botanicalNames':
      return (
        <SeveralSpecies
          label={field.label}
          values={Array.isArray(value) ? value.map(String) : []}
          hint={field.help}
          onChange={(names) => set(names.length > 0 ? names : undefined)}
        />
      );
    case 'rootstock':
      return species && species.rootstocks.length > 0 ? (
        <SelectField
          label={field.label}
          value={text}
          options={[
            { value: NONE, label: 'its own roots' },
            ...species.rootstocks.map((stock) => ({
              value: stock.name,
              label: `${stock.name}: ${Math.round(stock.sizeFactor * 100)} % of full size`,
            })),
            ...(text && !species.rootstocks.some((stock) => stock.name === text)
              ? [{ value: text, label: text }]
              : []),
          ]}
          hint={field.help}
          onChange={(next) => set(next === NONE ? undefined : next)}
        />
      ) : null;
    case 'layout':
      return (
        <LayoutField field={field} value={text} onChange={(next) => set(next === NONE ? undefined : next)} />
      );
    case 'date':
      return (
        <TextField
          label={field.label}
          type="date"
          value={text}
          hint={field.help}
          onChange={(next) => set(next.trim() === '' ? undefined : next.trim())}
        />
      );
    default:
      return (
        <TextField
          label={field.label}
          value={text}
          hint={field.help}
          onChange={(next) => set(next.trim() === '' ? undefined : next.trim())}
        />
      );
  }
}

function LayoutField(props: { field: PropertyField; value: string; onChange: (value: string) => void }) {
  const layouts = useApp((app) => app.document.site.layouts);
  return (
    <SelectField
      label={props.field.label}
      value={props.value}
      options={[
        { value: NONE, label: 'all of them' },
        ...(layouts ?? []).map((layout) => ({ value: layout.name, label: layout.name })),
      ]}
      hint={props.field.help}
      onChange={props.onChange}
    />
  );
}
