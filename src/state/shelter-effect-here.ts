import { setSite } from '../site/actions/set-site.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { type ShelterEffect, shelterEffectOf } from '../years/shelter-effect.ts';
import type { App } from './model.ts';

/** Says how much shelter speeds growth; the most is never less than what is reckoned with. One step to undo. */
export function setShelterEffect(app: App, part: Partial<ShelterEffect>): void {
  app.edit('Set how much shelter speeds growth', (document) => {
    const before = shelterEffectOf(document.site);
    const usual = part.usual ?? Math.min(before.usual, part.most ?? before.most);
    const most = Math.max(usual, part.most ?? before.most);
    const usualAndMost: SiteRecord['shelterEffect'] = { ...document.site.shelterEffect, usual, most };
    return setSite(document, { shelterEffect: usualAndMost });
  });
}
