import { readFileSync } from 'node:fs';
import Papa from 'papaparse';

export interface WindbreakRow {
  readonly table_id: string;
  readonly status: string;
  readonly barrier: string;
  readonly density_or_porosity: string;
  readonly distance_H: string;
  readonly value: string;
  readonly unit: string;
}

/** Rows of one published table. Throws when there are none: a missing fixture is a failure. */
export function windbreakRows(table: string): WindbreakRow[] {
  const text = readFileSync(new URL('./fixtures/windbreak-tables.csv', import.meta.url), 'utf8');
  const { data } = Papa.parse<WindbreakRow>(text, { header: true, skipEmptyLines: true });
  const rows = data.filter((row) => row.table_id === table);
  if (rows.length === 0) throw new Error(`No rows of table ${table}.`);
  return rows;
}
