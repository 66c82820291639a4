import { inOneLine, yearBandWords } from '../../belts/belt-words.ts';
import { beltsFound } from '../../state/belts-found.ts';
import { plural } from '../../state/format-words.ts';
import { useApp } from '../../state/store.ts';
import { Details } from '../parts/panel-head.tsx';
import './belts.css';

/** What is wrong with the belts, when the planned ones protect, and the field without what is borrowed. */
export function BeltLists() {
  const found = useApp(beltsFound);
  const faulty = found.filter(({ findings }) => findings.length > 0);
  if (found.length === 0) return null;
  return (
    <div>
      <Details
        title={faulty.length === 0 ? 'Nothing found wrong with the belts' : 'What is wrong with the belts'}
      >
        <Findings />
      </Details>
      <Planned />
      <Borrowed />
    </div>
  );
}

function Findings() {
  const found = useApp(beltsFound);
  const select = useApp((app) => app.select);
  return (
    <ul className="belt-list">
      {found
        .filter(({ findings }) => findings.length > 0)
        .map(({ facts, findings }) => (
          <li key={facts.id}>
            <button type="button" className="link" onClick={() => select(facts.id)}>
              {facts.label}
            </button>
            <p>{inOneLine(findings)}.</p>
          </li>
        ))}
    </ul>
  );
}

function Planned() {
  const found = useApp(beltsFound);
  const years = useApp((app) => app.beltYears);
  const select = useApp((app) => app.select);
  const planned = found.filter(({ facts }) => facts.planned && facts.kind === 'belt');
  if (planned.length === 0) return null;
  return (
    <Details title={`When ${plural(planned.length, 'planned belt protects', 'planned belts protect')}`}>
      <table>
        <caption className="unseen">First useful years of the planned belts</caption>
        <thead>
          <tr>
            <th scope="col">Belt</th>
            <th scope="col">Useful from, slow to fast growth</th>
          </tr>
        </thead>
        <tbody>
          {planned.map(({ facts }) => {
            const when = years.result?.get(facts.id);
            return (
              <tr key={facts.id}>
                <td>
                  <button type="button" className="link" onClick={() => select(facts.id)}>
                    {facts.label}
                  </button>
                </td>
                <td>{when ? yearBandWords(when) : '…'}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Details>
  );
}

function Borrowed() {
  const found = useApp(beltsFound);
  const felled = useApp((app) => app.felled);
  const select = useApp((app) => app.select);
  const show = useApp((app) => app.show);
  const standing = found.filter(({ facts }) => !facts.planned);
  if (standing.length === 0) return null;
  return (
    <Details title="Borrowed shelter: the field without an edge">
      <table className="belt-edges">
        <caption className="unseen">Standing edges and their owners</caption>
        <thead>
          <tr>
            <th scope="col">Edge</th>
            <th scope="col">Whose</th>
            <th scope="col">
              <span className="unseen">Look without it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {standing.map(({ facts: { id, label, owner } }) => {
            const gone = felled?.ids.includes(id) === true;
            return (
              <tr key={id}>
                <td>
                  <button type="button" className="link" onClick={() => select(id)}>
                    {label}
                  </button>
                </td>
                <td>{owner ?? 'not said'}</td>
                <td className="number">
                  <button
                    type="button"
                    aria-pressed={gone}
                    aria-label={gone ? `As it stands, with ${label}` : `Show without ${label}`}
                    onClick={() =>
                      show(
                        gone ? { felled: null } : { felled: { ids: [id], fromYear: 0 }, picture: 'wind-cut' },
                      )
                    }
                  >
                    {gone ? 'As it stands' : 'Without'}
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Details>
  );
}
