/**
 * The one bench: runs every *.bench.ts beside it, prints a table and writes the figures to .cache/bench.json.
 * A bench module exports `bench`, a function that measures and returns its rows.
 */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import type { BenchRow } from './bench-row.ts';

const here = new URL('.', import.meta.url);
const only = process.argv[2];
const rows: (BenchRow & { readonly file: string })[] = [];
for (const file of readdirSync(here).sort()) {
  if (!file.endsWith('.bench.ts') || (only && !file.includes(only))) continue;
  const { bench } = (await import(new URL(file, here).href)) as {
    bench: () => BenchRow[] | Promise<BenchRow[]>;
  };
  for (const row of await bench()) rows.push({ file, ...row });
}
console.table(
  rows.map(({ what, value, unit, note }) => ({ what, value: Number(value.toPrecision(4)), unit, note })),
);
mkdirSync('.cache', { recursive: true });
const machine = { node: process.version, processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
writeFileSync('.cache/bench.json', `${JSON.stringify({ machine, rows }, null, 2)}\n`);
