import { takenField } from '../../site/chosen-features.ts';
import { areaOfFeatureM2, fieldsOf } from '../../state/area-figures.ts';
import { formatArea } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { Answer } from '../parts/answer.tsx';
import { Choice } from '../parts/choice.tsx';
import { DrawButtons } from '../parts/draw-buttons.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { PanelHead, Section } from '../parts/panel-head.tsx';
import { ColdFields } from './cold-fields.tsx';
import { FieldTable } from './field-table.tsx';
import { Frosts } from './frosts.tsx';
import { GroundDetails } from './ground-details.tsx';
import { GroundLevels } from './ground-levels.tsx';
import { WoodsAround } from './woods-around.tsx';

/** Ground: which field, how large, how it lies. */
export function GroundPanel() {
  const picture = useApp((app) => app.picture);
  const show = useApp((app) => app.show);
  const openFiles = useApp((app) => app.openFiles);
  return (
    <div className="panel">
      <PanelHead question="Which ground?">
        Size, slope, and what shelters and shades it from outside. What is planted here stays for forty years.
      </PanelHead>
      <GroundFigure />
      <FieldTable />
      <div className="buttons">
        <button type="button" onClick={() => show({ dialog: 'choose-field' })}>
          Compare the fields
        </button>
      </div>
      <Choice
        label="What the map shows"
        value={picture}
        options={[
          { value: 'plain', label: 'Ground' },
          { value: 'slope', label: 'Slope' },
          { value: 'cold-air', label: 'Cold air' },
          { value: 'wind-cut', label: 'Shelter' },
          { value: 'light-share', label: 'Light' },
        ]}
        onChange={(chosen) => show({ picture: chosen })}
      />
      <ColdFields />
      <Frosts />
      <Section title="Draw">
        <DrawButtons
          items={[
            { label: 'A field', kind: 'field', geometry: 'Polygon' },
            { label: 'A building', kind: 'building', geometry: 'Polygon' },
            { label: 'A path', kind: 'path', geometry: 'LineString' },
            { label: 'Ground to keep free', kind: 'keepOut', geometry: 'Polygon' },
            { label: 'A line or drain', kind: 'service', geometry: 'LineString' },
          ]}
        />
        <div className="buttons">
          <button type="button" onClick={() => show({ dialog: 'sides' })}>
            Type sides and bearings
          </button>
          <FileButton accept=".geojson,.json,.kml,.gpx" multiple onFiles={(files) => void openFiles(files)}>
            Import a boundary
          </FileButton>
        </div>
      </Section>
      <GroundLevels />
      <WoodsAround />
      <GroundDetails />
    </div>
  );
}

function GroundFigure() {
  const document = useApp((app) => app.document);
  const units = useApp((app) => app.unitSystem);
  const fields = fieldsOf(document);
  const taken = takenField(document);
  if (fields.length === 0)
    return (
      <Answer figure="No field yet">Draw one, type its sides and bearings, or import its boundary.</Answer>
    );
  if (!taken)
    return (
      <Answer figure={`${fields.length} fields`}>
        on offer, {formatArea(Math.min(...fields.map(areaOfFeatureM2)), units)} to{' '}
        {formatArea(Math.max(...fields.map(areaOfFeatureM2)), units)}. Compare them, then take one.
      </Answer>
    );
  return (
    <Answer figure={formatArea(areaOfFeatureM2(taken), units)}>
      {taken.properties.name ?? 'The field'}
      {taken.properties.taken ? ' is taken' : ' is the only field'}
      {fields.length > 1 ? `, of ${fields.length} on offer` : ''}.
    </Answer>
  );
}
