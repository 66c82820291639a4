import { CELL_SIZES_M } from '../../state/cell-size.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { CauseTable } from '../parts/cause-table.tsx';
import { Details } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';

/** How sure it is, what was assumed, and how fine it is worked out. */
export function LightDetails() {
  const cellWantedM = useApp((app) => app.cellWantedM);
  const result = useApp((app) => app.light.result);
  const assumed = useApp((app) => app.assumed);
  const units = useApp((app) => app.unitSystem);
  const show = useApp((app) => app.show);
  return (
    <div>
      <Details title="How sure is this?">
        <CauseTable />
        <p>
          Each line changes one thing and leaves the rest as expected; the legend draws the map at each end.
          How much foliage lets through is known within what was published of it. An estimate is no guarantee,
          and a shade figure never means that a tree is sound.
        </p>
        {result ? (
          <p className="small soft">
            {result.directions} sun directions stand for the year. Against every ten minutes of every day the
            direct hours are off by {(result.quadratureError.mean * 100).toFixed(1)} % of the open hours in
            the mean, and by less than {(result.quadratureError.p99 * 100).toFixed(1)} % in 99 of 100 cells.
          </p>
        ) : null}
      </Details>
      <Details title="What was taken for granted">
        {assumed.length === 0 ? <p>Nothing: the site says it all.</p> : null}
        <ul>
          {assumed.map((sentence) => (
            <li key={sentence} className="small">
              {sentence}
            </li>
          ))}
        </ul>
        <p className="small soft">
          Light passes through crowns by the length of its path and the leaf area on it (Beer–Lambert, leaves
          at all angles). Stems are left out.
        </p>
      </Details>
      <Details title="How fine the map is worked out">
        <SelectField
          label="Cell"
          value={cellWantedM === null ? 'by area' : String(cellWantedM)}
          options={[
            {
              value: 'by area',
              label: result ? `by the area: now ${formatLength(result.grid.cellM, units)}` : 'by the area',
            },
            ...CELL_SIZES_M.map((cellM) => ({ value: String(cellM), label: formatLength(cellM, units) })),
          ]}
          hint="A finer cell takes longer; a coarse map comes first and can be stopped."
          onChange={(value) => show({ cellWantedM: value === 'by area' ? null : Number(value) })}
        />
      </Details>
    </div>
  );
}
