import { fieldsOf } from '../../state/area-figures.ts';
import { pairField } from '../../state/pair-shown.ts';
import { useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { ShareField } from '../parts/length-field.tsx';
import { SelectField } from '../parts/select-field.tsx';

const PICTURES = [
  { value: 'wind-cut', label: 'wind' },
  { value: 'light-share', label: 'light' },
] as const;
const LAST_YEAR = 40;

/** What both plans are inked with, on which field, in which year, and when it counts as in shelter. */
export function PairChoices() {
  const comparing = useApp((app) => app.comparing);
  const document = useApp((app) => app.document);
  const field = useApp(pairField);
  const year = useApp((app) => app.year);
  const show = useApp((app) => app.show);
  const fields = fieldsOf(document);
  return (
    <div className="pair-choices">
      <Choice
        label="Inked with"
        value={comparing.picture}
        options={PICTURES}
        onChange={(picture) => show({ comparing: { ...comparing, picture } })}
      />
      {fields.length > 1 && field ? (
        <SelectField
          label="Field"
          value={String(field.id)}
          options={fields.map(({ id, properties }) => ({
            value: String(id),
            label: properties.name ?? 'Field without a name',
          }))}
          onChange={(id) =>
            show({
              comparing: { ...comparing, fieldId: fields.find((each) => String(each.id) === id)?.id ?? null },
            })
          }
        />
      ) : null}
      <ShareField
        label="In shelter: this much of it"
        value={comparing.wantedShare}
        onChange={(wantedShare) => show({ comparing: { ...comparing, wantedShare } })}
      />
      <label className="pair-year">
        <span className="field-label">
          Year {year} after planting · {document.site.baseYear + year}
        </span>
        <input
          type="range"
          min={0}
          max={LAST_YEAR}
          step={1}
          value={year}
          aria-valuetext={`year ${year}, ${document.site.baseYear + year}`}
          onChange={(event) => show({ year: Number(event.target.value) })}
        />
      </label>
    </div>
  );
}
