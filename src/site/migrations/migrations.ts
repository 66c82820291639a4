import { CURRENT_FORMAT_VERSION } from '../records/site.ts';
import { nameTheVersion } from './0-to-1-name-the-version.ts';
import type { Migration, RawSite } from './migration.ts';

/** Every step from an older format, each from one version to the next. */
export const MIGRATIONS: readonly Migration[] = [nameTheVersion];

/** Brings a collection to the current version, step by step; the notes say what was done. */
export function migrated(
  raw: RawSite,
  fromVersion: number,
  fileName: string,
): { raw: RawSite; notes: string[] } {
  const notes: string[] = [];
  let current = raw;
  let version = fromVersion;
  while (version < CURRENT_FORMAT_VERSION) {
    const step = MIGRATIONS.find((migration) => migration.from === version);
    if (!step) throw new Error(`no migration from site format version ${version}`);
    current = step.migrate(current, fileName);
    notes.push(step.note);
    version = step.to;
  }
  return { raw: current, notes };
}
