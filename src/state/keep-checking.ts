import type { StoreApi } from 'zustand/vanilla';
import { findSpecies, suggestSpeciesName } from '../plants/find-species.ts';
import { checkSite } from '../site/check-site.ts';
import { filesOf } from './load-references.ts';
import type { App } from './model.ts';

/** Checking looks at everything against everything: it waits until the hand rests. */
const WAIT_MS = 500;

/** Keeps the list of problems in step with the site. */
export function keepChecking(store: StoreApi<App>): () => void {
  let timer: ReturnType<typeof setTimeout> | null = null;
  const check = () => {
    timer = null;
    const { document, missingFiles } = store.getState();
    const { species: siteSpecies } = document.site;
    const problems = checkSite(document, {
      knowsSpecies: (name) => {
        const species = findSpecies(name, siteSpecies);
        return species
          ? { known: true, matureHeightM: species.curve.maxHeightM, shootsAgain: species.shootsAgain }
          : { known: false, suggestion: suggestSpeciesName(name, siteSpecies) };
      },
      filesAtHand: filesOf(document.site).filter((name) => !missingFiles.includes(name)),
    });
    store.setState({ problems });
  };
  const later = () => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(check, WAIT_MS);
  };
  later();
  return store.subscribe((state, before) => {
    if (state.document !== before.document || state.missingFiles !== before.missingFiles) later();
  });
}
