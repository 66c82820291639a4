import { findSpecies } from '../../plants/find-species.ts';
import { formatLength } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';
import { treesOf } from './trees-of.ts';

/** Every tree: tag, species, height and spread in the chosen year with the band from slow to fast growth. */
export function TreeTable() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const grown = useApp((app) => app.grown);
  const year = useApp((app) => app.year);
  const units = useApp((app) => app.unitSystem);
  const select = useApp((app) => app.select);
  const trees = treesOf(document, layout);
  if (trees.length === 0) return null;
  const sizes = new Map(grown.things.map((thing) => [thing.id, thing]));
  const range = ([low, high]: readonly [number, number], factor = 1) =>
    high - low > 0.1 ? (
      <small className="soft">
        {formatLength(low * factor, units).replace(/ \w+$/, '')}–{formatLength(high * factor, units)}
      </small>
    ) : null;
  return (
    <table className="trees">
      <caption>Trees in year {year}</caption>
      <thead>
        <tr>
          <th scope="col">Tag</th>
          <th scope="col">Species</th>
          <th scope="col" className="number">
            Height
          </th>
          <th scope="col" className="number">
            Spread
          </th>
        </tr>
      </thead>
      <tbody>
        {trees.map((tree) => {
          const { properties } = tree;
          const size = sizes.get(tree.id);
          const botanical = size ? size.species : properties.species;
          const species = findSpecies(botanical, document.site.species);
          const own = findSpecies(properties.species, document.site.species);
          return (
            <tr key={tree.id}>
              <td>
                <button type="button" className="link" onClick={() => select(tree.id)}>
                  {properties.tag ?? properties.name ?? 'tree'}
                </button>
              </td>
              <td>
                {species?.commonName ?? botanical ?? 'no species'}
                {botanical === properties.species ? null : (
                  <small className="soft">follows {own?.commonName ?? properties.species ?? 'another'}</small>
                )}
                {properties.status === 'planned' || botanical !== properties.species ? null : (
                  <small className="soft">stands today</small>
                )}
              </td>
              <td className="number">
                {size ? formatLength(size.heightM, units) : 'not there'}
                {size ? range(size.heightBandM) : null}
              </td>
              <td className="number">
                {size ? formatLength(size.radiusM * 2, units) : ''}
                {size ? range(size.radiusBandM, 2) : null}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
