import { cellCount } from '../../numeric/grid.ts';
import { takeField } from '../../site/actions/take-field.ts';
import { areaOfFeatureM2, fieldsOf, figuresInside } from '../../state/area-figures.ts';
import { fieldGround } from '../../state/field-ground.ts';
import { formatArea, formatLength } from '../../state/format-measure.ts';
import { fallInWords } from '../../state/format-words.ts';
import { useApp } from '../../state/store.ts';

/** Each field on offer: size, how it lies, how the wind finds it today's year. */
export function FieldTable() {
  const document = useApp((app) => app.document);
  const ground = useApp((app) => app.ground);
  const frame = useApp((app) => app.frame);
  const shelter = useApp((app) => app.shelter.result);
  const units = useApp((app) => app.unitSystem);
  const year = useApp((app) => app.year);
  const edit = useApp((app) => app.edit);
  const select = useApp((app) => app.select);
  const fields = fieldsOf(document);
  if (fields.length === 0) return null;
  const cells = shelter ? cellCount(shelter.grid) : 0;
  const yearCut = shelter?.windShare.subarray(2 * cells, 3 * cells).map((share) => 1 - share);
  return (
    <ul className="fields">
      {fields.map((field) => {
        const lie = fieldGround({ ground, frame }, field);
        const cut = shelter && yearCut ? figuresInside(shelter.grid, yearCut, frame, field) : null;
        const { taken } = field.properties;
        const name = field.properties.name ?? 'Field without a name';
        return (
          <li key={field.id} className={taken ? 'taken' : undefined}>
            <div>
              <button type="button" className="link" onClick={() => select(field.id)}>
                {name}
              </button>
              <p className="small soft">
                {formatArea(areaOfFeatureM2(field), units)}
                {lie ? `, ${fallInWords(lie.slopeDeg, lie.aspectDeg ?? 0)}` : ''}
                {lie && lie.highestM - lie.lowestM > 0.5
                  ? `, ${formatLength(lie.highestM - lie.lowestM, units)} from lowest to highest`
                  : ''}
                {cut
                  ? cut.mean < 0.005
                    ? `, open to the wind in year ${year}`
                    : `, wind cut by ${Math.round(cut.mean * 100)} % in year ${year}`
                  : ''}
                .
              </p>
            </div>
            {fields.length > 1 ? (
              <button
                type="button"
                aria-pressed={taken === true}
                onClick={() =>
                  edit(taken ? 'Give a field back' : `Take ${name}`, (site) =>
                    takeField(site, taken ? null : field.id),
                  )
                }
              >
                {taken ? 'Taken' : 'Take it'}
              </button>
            ) : null}
          </li>
        );
      })}
    </ul>
  );
}
