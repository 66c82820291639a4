import type { WindSeason } from '../../belts/propose-types.ts';
import { answerWords } from '../../belts/propose-words.ts';
import { featuresOfKind } from '../../site/chosen-features.ts';
import { askOtherwise, proposedField } from '../../state/proposed-belts.ts';
import { appStore, useApp } from '../../state/store.ts';
import { ShareField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Section } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { ProposalList } from './proposal-list.tsx';

const SEASONS: readonly { value: WindSeason; label: string }[] = [
  { value: 'growing', label: 'growing season' },
  { value: 'rest', label: 'rest of the year' },
  { value: 'year', label: 'whole year' },
];

/** Belts for the field that cut the wind as the person asks. */
export function ProposeSection() {
  const document = useApp((app) => app.document);
  const field = useApp(proposedField);
  const { wish } = useApp((app) => app.proposing);
  const propose = useApp((app) => app.proposeBelts);
  const { status, result, message } = useApp((app) => app.proposals);
  if (!field) return null;
  const fields = featuresOfKind(document.features, 'field');
  const ask = (part: Partial<typeof wish>) => askOtherwise(appStore, part);
  return (
    <Section title="Propose belts">
      <p className="soft">
        Where new belts would stand, how long and of what, so that the wind is cut as you ask. Lines, drains,
        gates, paths, buildings and what grows already are kept clear of.
      </p>
      {fields.length > 1 ? (
        <SelectField
          label="For"
          value={String(field.id)}
          options={fields.map(({ id, properties }) => ({
            value: String(id),
            label: properties.name ?? `Field ${id}`,
          }))}
          onChange={(id) => ask({ fieldId: fields.find((one) => String(one.id) === id)?.id ?? null })}
        />
      ) : null}
      <div className="pair">
        <ShareField
          label="Wind cut by"
          value={wish.cutShare}
          onChange={(cutShare) => ask({ cutShare: Math.min(0.95, Math.max(0.05, cutShare)) })}
        />
        <ShareField
          label="Over this much of it"
          value={wish.overShare}
          onChange={(overShare) => ask({ overShare: Math.max(0.05, overShare) })}
        />
      </div>
      <div className="pair">
        <NumberField
          label="By year"
          value={wish.year}
          digits={0}
          min={1}
          max={100}
          onChange={(year) => ask({ year: Math.round(year) })}
        />
        <SelectField
          label="In the"
          value={wish.season}
          options={SEASONS}
          onChange={(season) => ask({ season })}
        />
      </div>
      <div className="buttons">
        <button type="button" onClick={propose} disabled={status === 'computing'}>
          {status === 'computing' ? 'Looking for belts…' : 'Propose belts'}
        </button>
      </div>
      <div aria-live="polite">
        {status === 'failed' ? <p className="warn">{message}</p> : null}
        {status === 'cancelled' && !result ? (
          <p className="soft">Stopped before an answer was there.</p>
        ) : null}
        {result ? <p>{answerWords(result)}</p> : null}
      </div>
      {result && result.alternatives.length > 0 ? <ProposalList found={result} /> : null}
    </Section>
  );
}
