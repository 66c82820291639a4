/**
 * The one bench: runs every *.bench.ts beside it (or those whose name holds the word given), prints a table of each
 * and writes all figures to .cache/bench.json. A bench module exports its `title` and `bench`, which measures and
 * returns rows of figures, their units in the names.
 */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';

type Row = Record<string, string | number>;
interface BenchModule {
  readonly title: string;
  readonly bench: () => Row[] | Promise<Row[]>;
}

const here = new URL('.', import.meta.url);
const word = process.argv[2] ?? '';
const results: { title: string; rows: Row[] }[] = [];
for (const file of readdirSync(here).sort()) {
  if (!file.endsWith('.bench.ts') || !file.includes(word)) continue;
  const { title, bench } = (await import(new URL(file, here).href)) as BenchModule;
  const rows = await bench();
  results.push({ title, rows });
  console.log(title);
  console.table(rows);
}
mkdirSync('.cache', { recursive: true });
const machine = { node: process.version, processor: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
writeFileSync('.cache/bench.json', `${JSON.stringify({ machine, results }, null, 2)}\n`);
