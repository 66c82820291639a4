import { causeRows } from '../../state/most-in-words.ts';
import { useApp } from '../../state/store.ts';
import { causesOfMap, endsOfMap } from '../../state/what-would-change.ts';

/** What is not known and would change the map that is shown, largest first, with the size of each. */
export function CauseTable() {
  const picture = useApp((app) => app.picture);
  const causes = useApp(causesOfMap);
  const ends = useApp(endsOfMap);
  if (!causes)
    return ends.status === 'computing' ? (
      <p className="soft">What would change the map most is being worked out.</p>
    ) : null;
  return (
    <table>
      <caption>What would change the map{ends.stale ? ' (before the last change)' : ''}</caption>
      <thead>
        <tr>
          <th scope="col">Not known</th>
          <th scope="col">The field’s mean</th>
          <th scope="col" className="number">
            A tenth of it by
          </th>
        </tr>
      </thead>
      <tbody>
        {causeRows(picture, causes).map((row) => (
          <tr key={row.cause}>
            <th scope="row">{row.name}</th>
            <td colSpan={row.widely === '' ? 2 : 1}>
              {row.ends.map((end) => (
                <div key={end}>{end}</div>
              ))}
            </td>
            {row.widely === '' ? null : <td className="number">{row.widely}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
