import { formatLength } from '../../state/format-measure.ts';
import {
  type ComparedReading,
  forgetReading,
  readMissWords,
  type SiteVigour,
} from '../../state/growth-here.ts';
import { appStore, useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';

const whenOf = ({ date, year }: ComparedReading['reading']): string => date ?? `end of ${year}`;

/** Every height that was read beside what was expected of it. */
export function MissesTable({ vigour }: { readonly vigour: SiteVigour }) {
  const units = useApp((app) => app.unitSystem);
  const length = (lengthM: number) => formatLength(lengthM, units);
  const { readings, left, fit, isNews } = vigour;
  return (
    <>
      {readings.length > 0 ? (
        <table className="misses">
          <caption>Read and expected</caption>
          <thead>
            <tr>
              <th scope="col">Plant</th>
              <th scope="col" className="number">
                Read
              </th>
              <th scope="col" className="number">
                Expected
              </th>
              <th scope="col" className="number">
                Miss
              </th>
            </tr>
          </thead>
          <tbody>
            {readings.map((each) => (
              <tr key={`${each.of} ${each.reading.measure} ${each.reading.position}`}>
                <td>
                  {each.label}
                  <small className="soft">
                    {each.plantedYear === null ? 'year of planting not known' : `planted ${each.plantedYear}`}
                    , read <span className="when">{whenOf(each.reading)}</span>
                    {each.reading.method ? `, ${each.reading.method}` : ''}
                  </small>
                  {each.reading.measure === null ? null : <Forget {...each} />}
                </td>
                <td className="number">{length(each.reading.heightM)}</td>
                <td className="number">
                  {length(each.expectedM)}
                  {fit && isNews && each.fittedM !== null ? (
                    <small className="soft">then {length(each.fittedM)}</small>
                  ) : null}
                </td>
                <td className="number">
                  {readMissWords(each, length)
                    .split(', ')
                    .map((part, i) => (i === 0 ? part : <small key={part}>{part}</small>))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {left.length > 0 ? (
        <Details title={`Heights that tell nothing of it: ${left.length}`}>
          <ul className="left-readings">
            {left.map(({ of, label, reading, why }) => (
              <li key={`${of} ${reading.measure} ${reading.position}`}>
                {label}, {length(reading.heightM)} ({whenOf(reading)}): {why}.
                {reading.measure === null ? null : <Forget of={of} label={label} reading={reading} />}
              </li>
            ))}
          </ul>
        </Details>
      ) : null}
    </>
  );
}

function Forget({ of, label, reading }: Pick<ComparedReading, 'of' | 'label' | 'reading'>) {
  const { measure } = reading;
  if (measure === null) return null;
  return (
    <button
      type="button"
      className="link forget"
      aria-label={`forget it: the height of ${label} read ${whenOf(reading)}`}
      onClick={() => forgetReading(appStore.getState(), of, measure)}
    >
      forget it
    </button>
  );
}
