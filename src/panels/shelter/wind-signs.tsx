import { hoursFigure, signsSeen } from '../../sheets/wind-climate-words.ts';
import { formatSpeed } from '../../state/format-measure.ts';
import { BEAUFORT_SCALE, type SiteWind } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';

/** How often each of Beaufort's signs is seen in the open, in hours of each season. */
export function WindSigns(props: { facts: SiteWind['facts'] }) {
  const { growing, rest } = props.facts;
  const units = useApp((app) => app.unitSystem);
  return (
    <table className="wind-signs">
      <caption>Hours in which at least this is seen in the open</caption>
      <thead>
        <tr>
          <th scope="col">Sign, and wind at 10 m</th>
          <th scope="col" className="number">
            Growing
          </th>
          <th scope="col" className="number">
            Rest
          </th>
        </tr>
      </thead>
      <tbody>
        {signsSeen(BEAUFORT_SCALE, [growing, rest]).map(({ force, landSign, fromMps }) => (
          <tr key={force}>
            <th scope="row">
              {landSign}
              <small className="soft band">
                Beaufort {force}, from {formatSpeed(fromMps, units)}
              </small>
            </th>
            <td className="number">{hoursFigure(growing.hoursFromForce[force])}</td>
            <td className="number">{hoursFigure(rest.hoursFromForce[force])}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
