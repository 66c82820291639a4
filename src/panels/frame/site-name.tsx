import { useEffect, useState } from 'react';
import { useApp } from '../../state/store.ts';

/** The site's name, changed where it stands. */
export function SiteName() {
  const name = useApp((app) => app.document.site.name);
  const edit = useApp((app) => app.edit);
  const [text, setText] = useState(name);
  useEffect(() => setText(name), [name]);
  const take = () => {
    const wanted = text.trim();
    if (wanted === '' || wanted === name) return setText(name);
    edit('Rename the site', (document) => ({ ...document, site: { ...document.site, name: wanted } }));
  };
  return (
    <input
      className="site-name"
      type="text"
      aria-label="Name of the site"
      value={text}
      onChange={(event) => setText(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setText(name);
      }}
    />
  );
}
