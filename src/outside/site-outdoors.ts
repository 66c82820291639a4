import type { Frame } from '../geo/frame.ts';
import type { Grid } from '../numeric/grid.ts';
import type { SiteDocument } from '../site/document.ts';

/** The site as a person walks over it: what is on it, and the ground it stands on. */
export interface SiteOutdoors {
  readonly document: SiteDocument;
  readonly layout: string | null;
  readonly frame: Frame;
  readonly ground: Grid;
}
