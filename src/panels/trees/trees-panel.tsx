import { findSpecies } from '../../plants/find-species.ts';
import { ROLES, type RoleLetter } from '../../plants/species.ts';
import { takenField } from '../../site/chosen-features.ts';
import { areaOfFeatureM2 } from '../../state/area-figures.ts';
import { useApp } from '../../state/store.ts';
import { listInWords } from '../../units/list-in-words.ts';
import { GrowthSection } from '../growth/growth-section.tsx';
import { Answer } from '../parts/answer.tsx';
import { Choice } from '../parts/choice.tsx';
import { DrawButtons } from '../parts/draw-buttons.tsx';
import { Details, PanelHead, Section } from '../parts/panel-head.tsx';
import { OpenYears } from '../years/open-years.tsx';
import { TreeBrush } from './tree-brush.tsx';
import { TreeTable } from './tree-table.tsx';
import { treesOf } from './trees-of.ts';

/** Tall trees: how many, which, how large they get. */
export function TreesPanel() {
  const shownEnd = useApp((app) => app.shownEnd);
  const show = useApp((app) => app.show);
  return (
    <div className="panel">
      <PanelHead question="Which tall trees, and where?">
        Few, and far apart: what stands under them has to live on the light they leave for forty years.
      </PanelHead>
      <TreesFigure />
      <TreeBrush />
      <Section title="Draw">
        <DrawButtons
          items={[
            { label: 'A tree', kind: 'tree', geometry: 'Point' },
            { label: 'A row', kind: 'row', geometry: 'LineString' },
          ]}
        />
        <div className="buttons">
          <button type="button" onClick={() => show({ dialog: 'tree-height' })}>
            How tall is a tree?
          </button>
        </div>
      </Section>
      <Choice
        label="If they grow"
        value={shownEnd === 'slow-growth' || shownEnd === 'fast-growth' ? shownEnd : 'usual'}
        options={[
          { value: 'slow-growth', label: 'slowly' },
          { value: 'usual', label: 'as usual' },
          { value: 'fast-growth', label: 'fast' },
        ]}
        onChange={(chosen) => show({ shownEnd: chosen === 'usual' ? null : chosen })}
      />
      <GrowthSection />
      <div className="buttons">
        <OpenYears />
      </div>
      <TreeTable />
      <Details title="Before you plant">
        <p className="caution">
          Keep tall trees off drains, buried services, overhead lines and road sight-lines; on clay, keep
          thirsty ones from buildings. Hedge heights, boundaries, tenancy and rights of way are a matter of
          local law: ask first.
        </p>
        <p className="caution">Felling, climbing and chainsaws are for trained people, never alone.</p>
      </Details>
    </div>
  );
}

function TreesFigure() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const trees = treesOf(document, layout);
  const planned = trees.filter((tree) => tree.properties.status === 'planned');
  if (trees.length === 0)
    return (
      <Answer figure="No trees yet">Choose a species, then put a tree or a row of them on the map.</Answer>
    );
  const counts = new Map<RoleLetter, number>();
  for (const tree of planned.length > 0 ? planned : trees) {
    const role = findSpecies(tree.properties.species, document.site.species)?.role ?? 'T';
    counts.set(role, (counts.get(role) ?? 0) + 1);
  }
  const roles = [...counts]
    .sort((a, b) => b[1] - a[1])
    .map(([role, count]) => `${count} ${ROLES[role].split(',')[0]}`);
  const field = takenField(document);
  const perHectare = field ? Math.round(planned.length / (areaOfFeatureM2(field) / 10_000)) : null;
  const standing = trees.length - planned.length;
  return (
    <Answer figure={planned.length > 0 ? `${planned.length} planned` : `${standing} standing`}>
      {listInWords(roles, 4)}.{' '}
      {planned.length > 0 && standing > 0 ? `${standing} more stand there today. ` : ''}
      {perHectare !== null && planned.length > 0
        ? `That is ${perHectare} to the hectare of ${field?.properties.name ?? 'the field'}.`
        : ''}
    </Answer>
  );
}
