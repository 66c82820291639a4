import { labelOf } from '../scene/things.ts';
import { keepToLayout } from '../site/actions/keep-to-layout.ts';
import type { SiteFeature } from '../site/document.ts';
import { layoutNames } from '../site/layout-names.ts';
import { REGISTRY } from '../site/records/registry.ts';
import type { App, AppState } from './model.ts';

type Chosen = Pick<AppState, 'document' | 'layout' | 'selection'>;

/** The chosen thing, where it is common while one layout is shown: whatever is done to it happens in all of them. */
function commonThing({ document, layout, selection }: Chosen): SiteFeature | null {
  if (layout === null) return null;
  const feature = document.features.find(({ id }) => id === selection);
  if (!feature || feature.properties.layout) return null;
  return REGISTRY[feature.properties.kind].fields.some(({ key }) => key === 'layout') ? feature : null;
}

/** What is to be known before it is changed; null: it is the shown layout's own, or no layout is shown. */
export function commonWords(state: Chosen): string | null {
  const feature = commonThing(state);
  if (!feature) return null;
  const count = layoutNames(state.document).length;
  const where = count === 1 ? 'is no part of the layout' : `is common to all ${count} layouts`;
  return `${labelOf(state.document, feature)} ${where}: what you change here changes in all.`;
}

/** Parts it from the others, so that only the shown layout's changes; what a hand was just moving goes back first. */
export function changeInShownOnly(app: App): void {
  const { layout, selection, hand } = app;
  if (layout === null || selection === null) return;
  if (hand.doing === 'moving' || hand.doing === 'reshaping') app.abandonGesture();
  app.edit(`Change it in ${layout} only`, (document) => keepToLayout(document, selection, layout));
}
