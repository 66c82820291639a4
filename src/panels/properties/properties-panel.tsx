import { findSpecies } from '../../plants/find-species.ts';
import { deleteFeatures } from '../../site/actions/delete-feature.ts';
import { duplicateFeatures } from '../../site/actions/duplicate-feature.ts';
import { setProperties } from '../../site/actions/set-properties.ts';
import type { SiteFeature } from '../../site/document.ts';
import { REGISTRY } from '../../site/records/registry.ts';
import { openStakes, stakesOf } from '../../state/shadow-stakes.ts';
import { appStore, useApp } from '../../state/store.ts';
import { windSpotsOf } from '../../state/wind-spots.ts';
import { BeltFindings } from '../belts/belt-findings.tsx';
import { BeltWhenSection } from '../belts/belt-when.tsx';
import { BorrowedEdge } from '../belts/borrowed-edge.tsx';
import { CareSection } from '../care/care-section.tsx';
import { Details } from '../parts/panel-head.tsx';
import { uncoverMap } from '../parts/uncover-map.ts';
import { STEPS } from '../steps.ts';
import { OpenWindSpots } from '../wind-spots/open-wind-spots.tsx';
import { BeltShelter } from './belt-shelter.tsx';
import { BesideEdge } from './beside-edge.tsx';
import { FeatureFacts } from './feature-facts.tsx';
import { FieldEditor } from './field-editor.tsx';
import { LayoutOf } from './layout-of.tsx';
import { MoveByMetres } from './move-by-metres.tsx';

/** The chosen thing: what it is in the chosen year, its properties, and what can be done with it. */
export function PropertiesPanel(props: { feature: SiteFeature }) {
  const { feature } = props;
  const { kind } = feature.properties;
  const record = REGISTRY[kind];
  const document = useApp((app) => app.document);
  const stakes = stakesOf(document, feature);
  const windSpots = windSpotsOf(document, feature);
  const edit = useApp((app) => app.edit);
  const select = useApp((app) => app.select);
  const show = useApp((app) => app.show);
  const takeHand = useApp((app) => app.takeHand);
  const hand = useApp((app) => app.hand);
  const step = useApp((app) => app.step);
  const siteSpecies = useApp((app) => app.document.site.species);
  const properties = feature.properties as Readonly<Record<string, unknown>>;
  const species = findSpecies(
    typeof properties.species === 'string' ? properties.species : null,
    siteSpecies,
  );
  const mixedWith = (kind === 'belt' || kind === 'block' ? (feature.properties.alsoSpecies ?? []) : []).map(
    (botanicalName) => {
      const other = findSpecies(botanicalName, siteSpecies);
      return { name: other?.commonName ?? botanicalName, cautions: other?.cautions ?? [] };
    },
  );
  const change = (key: string, value: unknown) =>
    edit(`Change the ${record.label}`, (document) => setProperties(document, [feature.id], { [key]: value }));
  const grows = species !== null && ['tree', 'belt', 'block'].includes(kind);
  const title = (properties.name ?? properties.tag ?? `This ${record.label}`) as string;
  const hold = (doing: 'moving' | 'reshaping') => {
    takeHand(hand.doing === doing ? { doing: 'looking' } : { doing, id: feature.id });
    uncoverMap();
  };
  const hasLayouts = useApp((app) => (app.document.site.layouts?.length ?? 0) > 0);
  const fields = record.fields.filter((field) => field.key !== 'layout' || hasLayouts);
  const shown = fields.filter((field) => !field.detail);
  const detail = fields.filter((field) => field.detail);
  return (
    <div className="panel" data-testid="properties">
      <button type="button" className="link back" onClick={() => select(null)}>
        Back to {STEPS.find((each) => each.id === step)?.name}
      </button>
      <header>
        <h1>{title}</h1>
        <p>
          {record.label}
          {species ? `, ${species.commonName} (${species.botanicalName})` : ''}
          {mixedWith.length > 0 ? `, mixed with ${mixedWith.map(({ name }) => name).join(', ')}` : ''}
        </p>
      </header>
      <FeatureFacts feature={feature} />
      <LayoutOf feature={feature} />
      <div className="buttons">
        <button type="button" aria-pressed={hand.doing === 'moving'} onClick={() => hold('moving')}>
          Move
        </button>
        {feature.geometry.type === 'Point' ? null : (
          <button type="button" aria-pressed={hand.doing === 'reshaping'} onClick={() => hold('reshaping')}>
            Reshape
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            let copy = feature.id;
            edit(`Duplicate the ${record.label}`, (document) => {
              const after = duplicateFeatures(document, [feature.id], 4, -4);
              copy = after.ids[0];
              return after.document;
            });
            select(copy);
          }}
        >
          Duplicate
        </button>
        <button
          type="button"
          onClick={() =>
            edit(`Delete the ${record.label}`, (document) => deleteFeatures(document, [feature.id]))
          }
        >
          Delete
        </button>
      </div>
      {stakes || windSpots || grows ? (
        <div className="buttons">
          {stakes ? (
            <button type="button" onClick={() => openStakes(appStore.getState(), stakes.of, stakes.day)}>
              Shadow stakes
              {stakes.readings > 0
                ? `, ${stakes.readings} ${stakes.readings === 1 ? 'reading' : 'readings'}`
                : null}
            </button>
          ) : null}
          {windSpots ? <OpenWindSpots {...windSpots} /> : null}
          {grows ? (
            <button type="button" onClick={() => show({ dialog: 'growth' })}>
              How it grows here
            </button>
          ) : null}
        </div>
      ) : null}
      {species?.cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
      {mixedWith.flatMap(({ name, cautions }) =>
        cautions.map((caution) => (
          <p key={`${name}: ${caution}`} className="caution">
            {name}: {caution}
          </p>
        )),
      )}
      <BeltShelter feature={feature} />
      <BesideEdge feature={feature} />
      <BeltFindings feature={feature} />
      <BeltWhenSection feature={feature} />
      <BorrowedEdge key={feature.id} feature={feature} />
      <CareSection feature={feature} />
      <div className="section wide-gap">
        {shown.map((field) => (
          <FieldEditor
            key={field.key}
            field={field}
            properties={properties}
            species={species}
            onChange={change}
          />
        ))}
      </div>
      <div>
        <Details title="Move it by metres">
          <MoveByMetres feature={feature} />
        </Details>
        {detail.length > 0 ? (
          <Details title="More about it">
            {detail.map((field) => (
              <FieldEditor
                key={field.key}
                field={field}
                properties={properties}
                species={species}
                onChange={change}
              />
            ))}
          </Details>
        ) : null}
      </div>
    </div>
  );
}
