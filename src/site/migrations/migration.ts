/** A site collection on its way to the current version: plain JSON, not yet checked. */
export interface RawSite {
  readonly site: Readonly<Record<string, unknown>>;
  readonly features: readonly unknown[];
  readonly [foreign: string]: unknown;
}
export interface Migration {
  readonly from: number;
  readonly to: number;
  /** Plain words for the person, about what was done to their file. */
  readonly note: string;
  /** Pure: returns a new collection. `fileName` may serve as a name. */
  readonly migrate: (raw: RawSite, fileName: string) => RawSite;
}
