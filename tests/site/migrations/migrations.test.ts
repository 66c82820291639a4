import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { MIGRATIONS } from '../../../src/site/migrations/migrations.ts';
import { parseSite } from '../../../src/site/parse-site.ts';
import { CURRENT_FORMAT_VERSION } from '../../../src/site/records/site.ts';
import { serialiseSite } from '../../../src/site/serialise-site.ts';

const folder = new URL('./fixtures/', import.meta.url);
const fixtures = readdirSync(folder).filter((name) => name.endsWith('.site.geojson'));
const read = (name: string) => parseSite(readFileSync(new URL(name, folder), 'utf8'), name);

describe('migrations', () => {
  it('lead from every older version to the current one, a version at a time', () => {
    expect(MIGRATIONS.map(({ from, to }) => [from, to])).toEqual(
      Array.from({ length: CURRENT_FORMAT_VERSION }, (_, v) => [v, v + 1]),
    );
  });

  it('are each run by a file kept here', () => {
    const run = new Set(fixtures.flatMap((name) => read(name).notes));
    for (const migration of MIGRATIONS)
      expect(run.has(migration.note), `no fixture runs the migration from ${migration.from}`).toBe(true);
  });

  it('fill in what a file without a version lacks', () => {
    const { document, notes } = read('version-0.site.geojson');
    expect(document.site).toEqual({
      formatVersion: 1,
      name: 'version-0',
      timeZone: 'Pacific/Auckland',
      baseYear: 2024,
      lightToKeep: { share: 0.35, areaShare: 0.6 },
    });
    expect(notes).toHaveLength(1);
    expect(parseSite(serialiseSite(document), 'again').notes).toEqual([]);
  });

  it('keep what a file without a version does say', () => {
    const { document } = read('version-0-named.site.geojson');
    expect(document.site).toEqual({ formatVersion: 1, name: 'Old plan', timeZone: 'UTC', baseYear: 2027 });
  });
});
