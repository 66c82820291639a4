import type { SiteFeature } from '../../site/document.ts';
import { fallStripShown, ownedBy } from '../../state/belts-found.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { listInWords } from '../../units/list-in-words.ts';
import { NumberField } from '../parts/number-field.tsx';
import { Details } from '../parts/panel-head.tsx';
import { InsuranceForm } from './insurance-form.tsx';

/** A standing edge: whose it is, the field without it, where its trees could fall, and what insures against its loss. */
export function BorrowedEdge(props: { readonly feature: SiteFeature }) {
  const { feature } = props;
  const { properties } = feature;
  const document = useApp((app) => app.document);
  const felled = useApp((app) => app.felled);
  const strip = useApp(fallStripShown);
  const year = useApp((app) => app.year);
  const units = useApp((app) => app.unitSystem);
  const show = useApp((app) => app.show);
  if ((properties.kind !== 'belt' && properties.kind !== 'block') || properties.status === 'planned')
    return null;
  const owner = properties.owner?.trim() || null;
  const all = owner ? ownedBy(document, owner) : [];
  const gone = felled?.ids.includes(feature.id) === true;
  const look = (ids: readonly SiteFeature['id'][]) =>
    show({ felled: { ids, fromYear: felled?.fromYear ?? 0 }, picture: 'wind-cut' });
  return (
    <section className="section" aria-label="Borrowed shelter">
      <h2>Borrowed shelter</h2>
      <p>
        {owner
          ? `It belongs to ${owner}, who may fell it.`
          : 'Nobody has said whose it is. What a neighbour owns, a neighbour may fell.'}
      </p>
      <div className="buttons">
        <button
          type="button"
          aria-pressed={gone}
          onClick={() => (gone ? show({ felled: null }) : look([feature.id]))}
        >
          {gone ? 'As it stands' : 'Show without it'}
        </button>
        {!gone && all.length > 1 ? (
          <button type="button" onClick={() => look(all)}>
            Without all {all.length} that belong to {owner}
          </button>
        ) : null}
      </div>
      {felled && gone ? (
        <NumberField
          label="Looked at as felled in year"
          unit="after planting"
          digits={0}
          min={0}
          max={100}
          value={felled.fromYear}
          hint="0: it is not there at all."
          onChange={(fromYear) => show({ felled: { ...felled, fromYear: Math.round(fromYear) } })}
        />
      ) : null}
      <Details title="If it is felled: the latest year to plant">
        <InsuranceForm edgeId={feature.id} />
      </Details>
      {strip ? (
        <p className="caution">
          In year {year} its trees are {formatLength(strip.heightM, units)} tall and could fall as far: the
          dashed strip on the map
          {strip.within.length > 0 ? ` reaches ${listInWords(strip.within, 4)}` : ''}. Dying and brittle trees
          fall first. Have them looked at by a trained person; felling is for trained people, never alone.
        </p>
      ) : null}
    </section>
  );
}
