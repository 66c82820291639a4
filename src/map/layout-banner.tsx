import { changeInShownOnly, commonWords } from '../state/common-thing.ts';
import { appStore, useApp } from '../state/store.ts';
import './bar.css';

/** Says on the map that the chosen thing is common to all layouts, before it is dragged in all of them. */
export function LayoutBanner() {
  const words = useApp(commonWords);
  const layout = useApp((app) => app.layout);
  if (words === null) return null;
  return (
    <div className="map-bar map-common" data-testid="common-thing" role="status">
      <p>{words}</p>
      <button type="button" onClick={() => changeInShownOnly(appStore.getState())}>
        Only in “{layout}”
      </button>
    </div>
  );
}
