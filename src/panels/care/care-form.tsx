import { useEffect, useRef } from 'react';
import type { CareRecord } from '../../site/records/care.ts';
import { MAX_YEAR } from '../../site/records/common-fields.ts';
import type { Woody } from '../../site/woody.ts';
import { CARE_CAUTIONS, cautionsOf, usualCare } from '../../state/care.ts';
import { useApp } from '../../state/store.ts';
import { LengthField, ShareField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { SpeciesPicker } from '../parts/species-picker.tsx';

const KINDS: readonly { readonly value: CareRecord['what']; readonly label: string }[] = [
  { value: 'pollard', label: 'Pollard: take the crown off at a height' },
  { value: 'coppice', label: 'Coppice: cut to the stump' },
  { value: 'raiseCrown', label: 'Raise the crown: take low branches' },
  { value: 'cutTo', label: 'Cut to a height' },
  { value: 'thin', label: 'Thin the crown' },
  { value: 'replace', label: 'Fell and plant another' },
  { value: 'die', label: 'Dies, or is felled' },
];

const HEIGHTS: Partial<Record<CareRecord['what'], string>> = {
  pollard: 'Height of the head',
  raiseCrown: 'Clear of branches up to',
  cutTo: 'Height that is left',
};

/** One piece of care: what, when, and what that kind of work needs to know. */
export function CareForm(props: {
  readonly feature: Woody;
  readonly care: CareRecord;
  /** Words of the button that keeps it. */
  readonly keep: string;
  readonly onChange: (care: CareRecord) => void;
  readonly onKeep: () => void;
  readonly onLeave: () => void;
}) {
  const { feature, care, onChange } = props;
  const document = useApp((app) => app.document);
  const box = useRef<HTMLDivElement>(null);
  // Whoever asked for the form goes on in it.
  useEffect(() => box.current?.querySelector('select')?.focus(), []);
  const set = (part: Partial<Record<string, unknown>>) => {
    const next: Record<string, unknown> = { ...care, ...part };
    for (const key of Object.keys(next)) if (next[key] === undefined) delete next[key];
    onChange(next as CareRecord);
  };
  const heightLabel = HEIGHTS[care.what];
  return (
    <div className="care-form" ref={box}>
      <SelectField
        label="What is done"
        value={care.what}
        options={KINDS}
        onChange={(what) => onChange(usualCare(document, feature, what, care.year))}
      />
      <NumberField
        label={care.what === 'die' ? 'Gone from the year' : 'In the year'}
        value={care.year}
        digits={0}
        min={document.site.baseYear - 200}
        max={MAX_YEAR}
        hint="The winter before the growing season of this year."
        onChange={(year) => set({ year: Math.round(year) })}
      />
      {heightLabel ? (
        <LengthField
          label={heightLabel}
          valueM={Number(care.heightM)}
          minM={0.1}
          maxM={60}
          onChange={(heightM) => set({ heightM })}
        />
      ) : null}
      {care.what === 'thin' ? (
        <ShareField
          label="Takes of its leaves"
          value={care.share}
          hint="Evenly out of the whole crown; they are back after five seasons."
          onChange={(share) => set({ share })}
        />
      ) : null}
      {care.what === 'replace' ? (
        <SpeciesPicker
          label="Planted in its place"
          value={care.species ?? null}
          none="the same again"
          onChange={(species) => set({ species: species ?? undefined })}
        />
      ) : null}
      {care.what === 'die' ? null : (
        <div className="pair">
          <NumberField
            label="Again every"
            unit="years"
            value={care.everyYears ?? null}
            digits={0}
            min={1}
            max={200}
            hint="Empty: once."
            onChange={(everyYears) => set({ everyYears: Math.round(everyYears) })}
            onClear={() => set({ everyYears: undefined, lastYear: undefined })}
          />
          {care.everyYears === undefined ? null : (
            <NumberField
              label="Last in"
              value={care.lastYear ?? null}
              digits={0}
              min={care.year}
              max={MAX_YEAR}
              hint="Empty: it goes on."
              onChange={(lastYear) => set({ lastYear: Math.round(lastYear) })}
              onClear={() => set({ lastYear: undefined })}
            />
          )}
        </div>
      )}
      <div>
        {[...cautionsOf(document, feature, care), ...CARE_CAUTIONS].map((caution) => (
          <p key={caution} className="caution">
            {caution}
          </p>
        ))}
      </div>
      <div className="buttons">
        <button type="button" className="main" onClick={props.onKeep}>
          {props.keep}
        </button>
        <button type="button" onClick={props.onLeave}>
          Leave it
        </button>
      </div>
    </div>
  );
}
