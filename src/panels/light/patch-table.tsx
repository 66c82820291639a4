import { formatShare } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

/** Every patch: its light in words and figures, and from which year it is too dark. */
export function PatchTable() {
  const patches = useApp((app) => app.outlook.result);
  const select = useApp((app) => app.select);
  if (!patches || patches.length === 0) return null;
  return (
    <table>
      <caption>Light on the patches, year {patches[0].year}</caption>
      <thead>
        <tr>
          <th scope="col">Patch</th>
          <th scope="col" className="number">
            Light
          </th>
          <th scope="col" className="number">
            Too dark from
          </th>
        </tr>
      </thead>
      <tbody>
        {patches.map((patch) => (
          <tr key={patch.id}>
            <td>
              {patch.implicit ? (
                patch.name
              ) : (
                <button type="button" className="link" onClick={() => select(patch.id)}>
                  {patch.name}
                </button>
              )}
              <small className={patch.enoughLight ? 'soft' : 'warn'}>
                {patch.enoughLight ? 'enough' : 'too dark'}: {formatShare(patch.areaShareWithEnoughLight)} of
                it keeps {formatShare(patch.shareToKeep)}
              </small>
            </td>
            <td className="number">{formatShare(patch.meanLightShare)}</td>
            <td className="number">
              {patch.years === null
                ? '…'
                : patch.years.darkFromYear === null
                  ? 'never'
                  : `year ${patch.years.darkFromYear}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
