import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FieldSummary, type PatchSummary, type Summary, summaryText } from '../batch/summary.ts';
import type { WhatWouldChange } from '../batch/what-would-change.ts';
import { type NamedBand, writeGeoTiff } from '../geo/formats/geotiff-write.ts';
import { cellCount } from '../numeric/grid.ts';
import type { CommonOptions } from './common-options.ts';
import { changeLines, type EndOptions } from './end-options.ts';
import type { Prepared } from './prepare.ts';

/** One file of results. */
export interface Raster {
  readonly file: string;
  readonly bands: readonly NamedBand[];
}

/** A table beside the rasters. */
export interface TextFile {
  readonly file: string;
  readonly text: string;
}

/** What a command has found. */
export interface Findings {
  readonly assumed: readonly string[];
  readonly directions: number;
  readonly quadratureError?: Summary['quadratureError'];
  readonly rasters: readonly Raster[];
  readonly texts?: readonly TextFile[];
  readonly fields: readonly FieldSummary[];
  readonly patches: readonly PatchSummary[];
  readonly whatWouldChangeIt?: WhatWouldChange | null;
  /** More for a person to read. */
  readonly lines?: readonly string[];
  /** The figures for a person to read. */
  readonly table: (areas: readonly PatchSummary[]) => string[];
}

/** Writes the rasters and the summary, and says on standard output what came out. */
export function finish(
  prepared: Prepared,
  options: CommonOptions & EndOptions,
  startedMs: number,
  found: Findings,
): void {
  const { site, frame, grid, scene } = prepared;
  mkdirSync(options.out, { recursive: true });
  for (const { file, bands } of found.rasters)
    writeFileSync(join(options.out, file), writeGeoTiff(bands, grid, frame));
  const texts = found.texts ?? [];
  for (const { file, text } of texts) writeFileSync(join(options.out, file), text);
  const summary: Summary = {
    site: site.document.site.name,
    year: scene.year,
    layout: scene.layout,
    end: options.end ?? null,
    cellM: grid.cellM,
    cells: cellCount(grid),
    crs: `EPSG:${frame.epsg}`,
    assumed: found.assumed,
    directions: found.directions,
    ...(found.quadratureError ? { quadratureError: found.quadratureError } : {}),
    elapsedMs: Date.now() - startedMs,
    fields: found.fields,
    patches: found.patches,
    ...(found.whatWouldChangeIt ? { whatWouldChangeIt: found.whatWouldChangeIt } : {}),
  };
  const text = summaryText(summary);
  writeFileSync(join(options.out, 'summary.json'), text);
  if (options.json) {
    process.stdout.write(text);
    return;
  }
  const lines = [
    `${summary.site}, year ${summary.year} (season of ${site.document.site.baseYear + summary.year})${
      summary.layout ? `, layout ${summary.layout}` : ''
    }${summary.end ? `, with ${summary.end}` : ''}: ${summary.cells} cells of ${summary.cellM} m`,
    ...found.table([...found.fields, ...found.patches]),
    ...(found.whatWouldChangeIt ? changeLines(found.whatWouldChangeIt) : []),
    ...(found.lines ?? []),
    ...site.notes,
    ...found.assumed.map((assumption) => `Assumed: ${assumption}`),
    `Written to ${options.out}: ${[...[...found.rasters, ...texts].map(({ file }) => file), 'summary.json'].join(', ')}`,
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
}
