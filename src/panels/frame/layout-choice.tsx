import { useApp } from '../../state/store.ts';

const NONE = '';

/** Which of the site's layouts is on the screen; nothing where the site has none. */
export function LayoutChoice() {
  const layouts = useApp((app) => app.document.site.layouts);
  const layout = useApp((app) => app.layout);
  const show = useApp((app) => app.show);
  if (!layouts || layouts.length === 0) return null;
  return (
    <select
      className="layout-choice"
      aria-label="Layout"
      value={layout ?? NONE}
      onChange={(event) => show({ layout: event.target.value === NONE ? null : event.target.value })}
    >
      <option value={NONE}>no layout</option>
      {layouts.map(({ name }) => (
        <option key={name} value={name}>
          {name}
        </option>
      ))}
    </select>
  );
}
