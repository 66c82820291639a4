import { layoutNames } from '../../site/layout-names.ts';
import { useApp } from '../../state/store.ts';

const NONE = '';

/** Which of the site's layouts is on the screen; nothing where the site has none. */
export function LayoutChoice() {
  const document = useApp((app) => app.document);
  const layout = useApp((app) => app.layout);
  const show = useApp((app) => app.show);
  const names = layoutNames(document);
  if (names.length === 0) return null;
  return (
    <select
      className="layout-choice"
      aria-label="Layout on the map"
      value={layout ?? NONE}
      onChange={(event) => show({ layout: event.target.value === NONE ? null : event.target.value })}
    >
      <option value={NONE}>what is common to all</option>
      {names.map((name) => (
        <option key={name} value={name}>
          {name}
        </option>
      ))}
    </select>
  );
}
