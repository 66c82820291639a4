import { speedIn, speedUnit } from '../../state/format-measure.ts';
import type { SeasonFacts } from '../../state/site-wind.ts';
import { useApp } from '../../state/store.ts';
import { fineDirectionWord } from '../../units/compass.ts';

/** Each direction of a season with the two numbers of its Weibull distribution. */
export function WindDirections(props: { caption: string; season: SeasonFacts }) {
  const units = useApp((app) => app.unitSystem);
  const speed = (mps: number) => speedIn(mps, units).toFixed(1);
  return (
    <table>
      <caption>{props.caption}</caption>
      <thead>
        <tr>
          <th scope="col">From the</th>
          <th scope="col" className="number">
            % of hours
          </th>
          <th scope="col" className="number">
            mean {speedUnit(units)}
          </th>
          <th scope="col" className="number">
            Weibull c, k
          </th>
        </tr>
      </thead>
      <tbody>
        {props.season.sectors
          .filter(({ frequency }) => frequency > 0)
          .map(({ fromDeg, frequency, meanSpeedMps, weibullScaleMps, weibullK }) => (
            <tr key={fromDeg}>
              <th scope="row">
                {fineDirectionWord(fromDeg)} <small className="soft">{Math.round(fromDeg)}°</small>
              </th>
              <td className="number">{(frequency * 100).toFixed(1)}</td>
              <td className="number">{speed(meanSpeedMps)}</td>
              <td className="number">
                {speed(weibullScaleMps)}, {weibullK.toFixed(2)}
              </td>
            </tr>
          ))}
      </tbody>
    </table>
  );
}
