import type { SiteFeature } from '../../site/document.ts';
import { changeInShownOnly, commonWords } from '../../state/common-thing.ts';
import { appStore, useApp } from '../../state/store.ts';

/** Whose a thing is while there are layouts: one layout's own, or common to all and changed in all. */
export function LayoutOf({ feature }: { readonly feature: SiteFeature }) {
  const words = useApp(commonWords);
  const layout = useApp((app) => app.layout);
  const own = feature.properties.layout;
  if (own) return <p className="soft">Only in layout “{own}”.</p>;
  if (words === null) return null;
  return (
    <div className="section">
      <p className="soft">{words}</p>
      <div className="buttons">
        <button type="button" onClick={() => changeInShownOnly(appStore.getState())}>
          Change it in “{layout}” only
        </button>
      </div>
    </div>
  );
}
