import { useMemo } from 'react';
import { formatLength } from '../../state/format-measure.ts';
import { sizesNow } from '../../state/sizes-now.ts';
import { useApp } from '../../state/store.ts';

const KINDS = ['belt', 'block', 'wall', 'building'];

/** What shelters: each with its height today and in the chosen year, with the band from slow to fast growth. */
export function BeltTable() {
  const grown = useApp((app) => app.grown);
  const document = useApp((app) => app.document);
  const frame = useApp((app) => app.frame);
  const layout = useApp((app) => app.layout);
  const year = useApp((app) => app.year);
  const units = useApp((app) => app.unitSystem);
  const select = useApp((app) => app.select);
  const today = useMemo(() => sizesNow({ document, frame, layout }), [document, frame, layout]);
  const things = grown.things.filter((thing) => KINDS.includes(thing.kind));
  if (things.length === 0)
    return (
      <p className="soft">Nothing shelters the site yet: draw what stands around it, then what you plan.</p>
    );
  return (
    <table>
      <caption>What shelters</caption>
      <thead>
        <tr>
          <th scope="col">Belt, block or wall</th>
          <th scope="col" className="number">
            Now
          </th>
          <th scope="col" className="number">
            Year {year}
          </th>
        </tr>
      </thead>
      <tbody>
        {things.map((thing) => {
          const now = today.get(thing.id)?.heightM;
          const [low, high] = thing.heightBandM;
          return (
            <tr key={thing.id}>
              <td>
                <button type="button" className="link" onClick={() => select(thing.id)}>
                  {thing.label}
                </button>
              </td>
              <td className="number">{now === undefined ? '–' : formatLength(now, units)}</td>
              <td className="number">
                {formatLength(thing.heightM, units)}
                {high - low > 0.1 ? (
                  <small className="soft band">
                    {formatLength(low, units)} to {formatLength(high, units)}
                  </small>
                ) : null}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
