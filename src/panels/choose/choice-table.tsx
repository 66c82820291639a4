import type { Choice } from '../../choose/choice.ts';
import { choiceRows } from '../../choose/choice-words.ts';
import { FIELD_STATES } from '../../choose/choose-types.ts';
import { type ChooseUnits, statesWords } from '../../choose/measure-words.ts';
import { CellPictureMark } from './cell-picture.tsx';

/** Never with the unit alone on a line of its own. */
const withItsUnit = (cell: string): string => cell.replace(/ (?=\S+$)/, '\u00a0');

/** Every measure, fields side by side. */
export function ChoiceTable({ choice, units }: { readonly choice: Choice; readonly units: ChooseUnits }) {
  const rows = choiceRows(choice.fields, units);
  const groups = [...new Set(rows.map(({ group }) => group))];
  return (
    <section aria-label="Every figure">
      <h3>Every figure</h3>
      <p className="small soft">
        Where several stand in a row: {statesWords(FIELD_STATES)}. A bar of a share is of the whole, any other
        of the most that a field here has; the arrow is the way down, north up.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is to be scrolled by keys */}
      <section className="choice-table" tabIndex={0} aria-label="Fields side by side">
        <table>
          <thead>
            <tr>
              <td />
              {choice.fields.map(({ id, name, out }) => (
                <th key={id} scope="col">
                  {name}
                  {out ? <small>out</small> : null}
                </th>
              ))}
            </tr>
          </thead>
          {groups.map((group) => (
            <tbody key={group}>
              <tr>
                <th scope="rowgroup" colSpan={choice.fields.length + 1} className="choice-group">
                  {group}
                </th>
              </tr>
              {rows
                .filter((row) => row.group === group)
                .map(({ what, cells, pictures }) => (
                  <tr key={what}>
                    <th scope="row" className="plain">
                      {what}
                    </th>
                    {cells.map((cell, k) => (
                      <td key={choice.fields[k].id}>
                        <CellPictureMark picture={pictures[k]} /> {withItsUnit(cell)}
                      </td>
                    ))}
                  </tr>
                ))}
            </tbody>
          ))}
        </table>
      </section>
    </section>
  );
}
