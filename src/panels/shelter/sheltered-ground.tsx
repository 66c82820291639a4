import { formatArea, formatShare } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { areaShelter } from './area-shelter.ts';

const LIMITS = [0.15, 0.3, 0.5] as const;

/** Ground of the field and of each patch on which the wind is cut by at least so much. */
export function ShelteredGround() {
  const areas = useApp(areaShelter);
  const units = useApp((app) => app.unitSystem);
  if (areas.length === 0) return null;
  return (
    <table>
      <caption>Ground with the wind cut by at least, growing season</caption>
      <thead>
        <tr>
          <th scope="col">Of</th>
          {LIMITS.map((limit) => (
            <th key={limit} scope="col" className="number">
              {formatShare(limit)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {areas.map(({ id, name, areaM2, cut }) => (
          <tr key={id}>
            <th scope="row">{name}</th>
            {LIMITS.map((limit) => {
              const share = cut.shareFrom(limit);
              return (
                <td key={limit} className="number">
                  {formatArea(areaM2 * share, units)}
                  <small className="soft">{formatShare(share)}</small>
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
