import { findSpecies } from '../../plants/find-species.ts';
import { useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { SpeciesPicker } from '../parts/species-picker.tsx';

const OWN_ROOTS = 'own roots';

/** What the next tree or row is: species, rootstock, spacing. */
export function TreeBrush() {
  const brush = useApp((app) => app.brush);
  const set = useApp((app) => app.setBrush);
  const siteSpecies = useApp((app) => app.document.site.species);
  const species = findSpecies(brush.treeSpecies, siteSpecies);
  return (
    <div className="section wide-gap">
      <SpeciesPicker
        label="Species"
        value={brush.treeSpecies}
        none="no species: it does not grow"
        onChange={(treeSpecies) => set({ treeSpecies, treeRootstock: null })}
      />
      {species && species.rootstocks.length > 0 ? (
        <SelectField
          label="Rootstock"
          value={brush.treeRootstock ?? OWN_ROOTS}
          options={[
            { value: OWN_ROOTS, label: 'seedling or own roots' },
            ...species.rootstocks.map((stock) => ({
              value: stock.name,
              label: `${stock.name}: ${Math.round(stock.sizeFactor * 100)} % of full size`,
            })),
          ]}
          onChange={(name) => set({ treeRootstock: name === OWN_ROOTS ? null : name })}
        />
      ) : null}
      <Choice
        label="Trees that are drawn"
        value={brush.status}
        options={[
          { value: 'planned', label: 'are planned' },
          { value: 'existing', label: 'stand today' },
        ]}
        onChange={(status) => set({ status })}
      />
      <LengthField
        label="Spacing in a row"
        valueM={brush.rowSpacingM}
        minM={0.2}
        maxM={200}
        onChange={(rowSpacingM) => set({ rowSpacingM })}
      />
      {species?.cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
    </div>
  );
}
