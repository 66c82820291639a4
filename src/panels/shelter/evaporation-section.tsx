import { lookUp } from '../../numeric/even-table.ts';
import {
  EVAPORATION_RESTS_ON,
  reliefThanOpen,
  reliefWords,
  wrongWayWords,
} from '../../sheets/evaporation-words.ts';
import { evaporationOf } from '../../state/evaporation.ts';
import { formatDepth } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { Section } from '../parts/panel-head.tsx';
import { areaShelter } from './area-shelter.ts';

/** What less wind saves of the water that the ground gives off, for the field and each patch. */
export function EvaporationSection() {
  const areas = useApp(areaShelter);
  const evaporation = useApp(evaporationOf);
  const units = useApp((app) => app.unitSystem);
  if (areas.length === 0 || !evaporation) return null;
  if (!evaporation.curve)
    return (
      <Section title="Water that shelter saves">
        <p className="small soft">{evaporation.missing}</p>
      </Section>
    );
  const { seasonMm, wrongWayDays, days } = evaporation.curve;
  const mm = (depthMm: number) => formatDepth(depthMm, units);
  const openMm = lookUp(seasonMm, 1);
  const rows = areas.map(({ id, name, cut }) => ({
    id,
    name,
    hereMm: cut.meanOf((share) => lookUp(seasonMm, 1 - share)),
  }));
  const wrongWay = wrongWayWords(wrongWayDays, days);
  return (
    <Section title="Water that shelter saves">
      <p>
        On {rows[0].name} grass gives off {mm(rows[0].hereMm)} over the growing season,{' '}
        {reliefThanOpen(openMm, rows[0].hereMm, mm)}.{wrongWay ? ` ${wrongWay}` : ''}
      </p>
      <table>
        <caption className="unseen">Evaporation over the growing season</caption>
        <thead>
          <tr>
            <th scope="col">Of</th>
            <th scope="col" className="number">
              gives off
            </th>
            <th scope="col" className="number">
              for the shelter
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, name, hereMm }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td className="number">{mm(hereMm)}</td>
              <td className="number">{reliefWords(openMm, hereMm, mm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small soft">{EVAPORATION_RESTS_ON}</p>
    </Section>
  );
}
