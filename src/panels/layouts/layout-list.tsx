import { copyLayout } from '../../site/actions/copy-layout.ts';
import { deleteLayout } from '../../site/actions/delete-layout.ts';
import { renameLayout } from '../../site/actions/rename-layout.ts';
import { layoutNames } from '../../site/layout-names.ts';
import { freeLayoutName, layoutFacts } from '../../state/layout-facts.ts';
import { useApp } from '../../state/store.ts';
import { TextField } from '../parts/text-field.tsx';

/** Every layout with its name, what it holds, and what can be done with it. */
export function LayoutList() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const units = useApp((app) => app.unitSystem);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  return (
    <ul className="layout-list">
      <li>
        <p className="layout-facts">
          <b>What is common to all</b>
          <small className="soft">{layoutFacts(document, null, units)}</small>
        </p>
        <div className="buttons">
          <button type="button" aria-pressed={layout === null} onClick={() => show({ layout: null })}>
            On the map
          </button>
        </div>
      </li>
      {layoutNames(document).map((name) => (
        <li key={name}>
          <div className="layout-facts">
            <TextField
              label="Name"
              value={name}
              onChange={(next) => edit(`Rename layout ${name}`, (site) => renameLayout(site, name, next))}
            />
            <small className="soft">{layoutFacts(document, name, units)}</small>
          </div>
          <div className="buttons">
            <button
              type="button"
              aria-pressed={layout === name}
              aria-label={`Show ${name} on the map`}
              onClick={() => show({ layout: name })}
            >
              On the map
            </button>
            <button
              type="button"
              aria-label={`Copy ${name}`}
              onClick={() => {
                const copy = freeLayoutName(document, `${name}, changed`);
                edit(`Copy layout ${name}`, (site) => copyLayout(site, name, copy));
                show({ layout: copy });
              }}
            >
              Copy
            </button>
            <button
              type="button"
              aria-label={`Delete ${name}`}
              onClick={() => edit(`Delete layout ${name}`, (site) => deleteLayout(site, name))}
            >
              Delete
            </button>
          </div>
        </li>
      ))}
    </ul>
  );
}
