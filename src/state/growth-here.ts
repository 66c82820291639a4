import { LEAST_VIGOUR, MOST_VIGOUR } from '../growth/plant-vigour.ts';
import { plainName } from '../plants/plain-name.ts';
import { kept, type SiteVigour, siteVigour } from '../scene/site-vigour.ts';
import { setSite } from '../site/actions/set-site.ts';
import { forgetHeight, startFromNewest, takeHeight } from '../site/actions/take-height.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import { featureById } from '../site/find-feature.ts';
import { firstPlace } from '../site/places.ts';
import { seasonPosition } from '../site/season-position.ts';
import type { App, AppState } from './model.ts';

export {
  leafWords,
  readMissWords,
  VIGOUR_RULE,
  vigourSentences,
  vigourWords,
} from '../scene/growth-words.ts';
export type { ComparedReading, SiteVigour } from '../scene/site-vigour.ts';
export { type SpeciesGrowth, speciesGrowth, speciesOnSite, TABLE_SEASONS } from '../scene/species-growth.ts';
export { LEAST_VIGOUR, MOST_VIGOUR };

let last: {
  readonly document: SiteDocument;
  readonly layout: string | null;
  readonly found: SiteVigour;
} | null = null;

/** What measured heights say of how well things grow on the site as it is shown; worked out once for all who ask. */
export function vigourHere({ document, layout }: Pick<AppState, 'document' | 'layout'>): SiteVigour {
  if (last?.document !== document || last.layout !== layout)
    last = { document, layout, found: siteVigour(document, layout) };
  return last.found;
}

/** A document with the vigour of one species against the others set in its entry of `site.species`; 1 takes it out. */
function withSpeciesVigour(document: SiteDocument, name: string, vigour: number): SiteDocument {
  const entries = document.site.species ?? [];
  const own = entries.find((entry) => plainName(entry.name) === plainName(name));
  const { vigour: _, ...rest } = own ?? { name };
  const entry = kept(vigour) === 1 ? rest : { ...rest, vigour: kept(vigour) };
  // An entry that says nothing but a name goes.
  const says = Object.keys(entry).length > 1;
  const others = entries.filter((each) => each !== own);
  const species = own
    ? entries.flatMap((each) => (each === own ? (says ? [entry] : []) : [each]))
    : says
      ? [...others, entry]
      : others;
  return setSite(document, { species: species.length > 0 ? species : undefined });
}

/** Sets how well things grow here, 1 as on usual ground; one step to undo. */
export const setSiteVigour = (app: App, vigour: number): void =>
  app.edit('Set how well things grow here', (document) =>
    setSite(document, { vigour: kept(vigour) === 1 ? undefined : kept(vigour) }),
  );

/** Sets how well one species grows here against the others; one step to undo. */
export const setSpeciesVigour = (app: App, name: string, vigour: number): void =>
  app.edit('Set how well a species grows here', (document) => withSpeciesVigour(document, name, vigour));

/** Takes over what the measured heights say, of the site and of each species; one step to undo. */
export function takeVigour(app: App, { fit }: SiteVigour): void {
  if (!fit) return;
  app.edit('Take over what measured heights say', (document) =>
    fit.species.reduce(
      (after, { species, vigour }) => withSpeciesVigour(after, species, vigour),
      setSite(document, { vigour: kept(fit.site.vigour) === 1 ? undefined : kept(fit.site.vigour) }),
    ),
  );
}

/** The year at the end of whose season a height that was read on a day counts. */
const measuredYearOf = (document: SiteDocument, id: FeatureId, date: string): number =>
  Math.round(
    seasonPosition(document.site, firstPlace(featureById(document, id).geometry.coordinates)[1], date),
  );

/** Gives the thing a height that was read on a day, and keeps the reading; one step to undo. */
export const takeReadHeight = (
  app: App,
  id: FeatureId,
  read: { readonly heightM: number; readonly date: string; readonly method: string },
): void =>
  app.edit('Take a measured height', (document) =>
    takeHeight(document, id, { ...read, measuredYear: measuredYearOf(document, id, read.date) }),
  );

/** Takes a reading away again. */
export const forgetReading = (app: App, of: FeatureId, measure: FeatureId): void =>
  app.edit('Forget a measured height', (document) => forgetHeight(document, of, measure));

/** Has every plant with a newer reading than the model starts from start from that; one step to undo. */
export const startAllFromNewest = (app: App, ids: readonly FeatureId[]): void =>
  app.edit('Start from the newest heights', (document) =>
    ids.reduce((after, id) => startFromNewest(after, id), document),
  );
