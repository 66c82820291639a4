import { missingPricesWords } from '../../layouts/layout-words.ts';
import { setSite } from '../../site/actions/set-site.ts';
import type { Prices } from '../../site/records/site.ts';
import { pairComparison } from '../../state/pair-shown.ts';
import { useApp } from '../../state/store.ts';
import { NumberField } from '../parts/number-field.tsx';
import { Section } from '../parts/panel-head.tsx';
import { TextField } from '../parts/text-field.tsx';

const FIELDS = [
  { key: 'perTree', label: 'A tree' },
  { key: 'perBeltM', label: 'A metre of belt' },
  { key: 'perWallM', label: 'A metre of wall, fence or net' },
] as const;

/** What planting costs, as the person knows it: none is made up. */
export function PriceFields() {
  const prices = useApp((app) => app.document.site.prices);
  const missing = useApp((app) => {
    const comparison = pairComparison(app);
    return comparison && missingPricesWords(comparison);
  });
  const edit = useApp((app) => app.edit);
  const change = (part: Partial<Prices>) =>
    edit('Change the prices', (document) => {
      const next = Object.fromEntries(
        Object.entries({ ...document.site.prices, ...part }).filter(([, value]) => value !== undefined),
      );
      return setSite(document, { prices: Object.keys(next).length > 0 ? next : undefined });
    });
  return (
    <Section title="Prices">
      {missing ? <p className="soft">{missing}</p> : null}
      <div className="pair-prices">
        {FIELDS.map(({ key, label }) => (
          <NumberField
            key={key}
            label={label}
            value={prices?.[key] ?? null}
            min={0}
            unit={prices?.currency}
            onChange={(value) => change({ [key]: value })}
            onClear={() => change({ [key]: undefined })}
          />
        ))}
        <TextField
          label="Currency"
          value={prices?.currency ?? ''}
          placeholder="such as CAD"
          onChange={(text) => change({ currency: text.trim() || undefined })}
        />
      </div>
    </Section>
  );
}
