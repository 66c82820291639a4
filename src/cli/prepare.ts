import type { Frame } from '../geo/frame.ts';
import { createLocalRunner } from '../jobs/local-runner.ts';
import type { JobRunner } from '../jobs/messages.ts';
import { createNodeRunner } from '../jobs/node-runner.ts';
import { paceSpeeds } from '../jobs/run-step-years.ts';
import type { GridSpec } from '../numeric/grid.ts';
import type { SceneOptions } from '../scene/options.ts';
import { siteGrid } from '../scene/site-grid.ts';
import { siteFrame, siteGround, terrainBox } from '../scene/site-ground.ts';
import { computeArea } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { layoutNames } from '../site/layout-names.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { readWeatherFile } from '../sun/weather/read-weather-file.ts';
import { BadInputError } from '../units/bad-input.ts';
import { USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import { pathFromCaller } from './caller-path.ts';
import type { CommonOptions } from './common-options.ts';
import { readBytes, readSite, type SiteOnDisk } from './read-files.ts';
import { readSurfaceOf } from './read-surface.ts';

/** All that a computing command needs before it can ask an engine. */
export interface Prepared {
  readonly site: SiteOnDisk;
  readonly frame: Frame;
  readonly grid: GridSpec;
  readonly fields: readonly FieldFeature[];
  readonly scene: SceneOptions;
  readonly runner: JobRunner;
}

/** Worker threads, or this thread alone for `--threads 1`. */
const startRunner = (threads: number): JobRunner =>
  threads === 1 ? createLocalRunner() : createNodeRunner(threads);

/** The ground of the site, its terrain file read where it names one. */
export async function readGroundOf(site: SiteOnDisk, frame: Frame, runner: JobRunner) {
  const { document, fileName, pathOf } = site;
  const { terrainFile } = document.site;
  if (!terrainFile) return siteGround(document, frame, null);
  const bytes = readBytes(
    pathOf(terrainFile),
    `${fileName}: site.terrainFile is ${JSON.stringify(terrainFile)}`,
  );
  const { ground } = await runner.run('ground-file', {
    fileName: terrainFile,
    bytes: bytes.buffer,
    frame,
    box: terrainBox(document, frame),
  });
  return siteGround(document, frame, ground);
}

export function readWeatherOf({ document, fileName, pathOf }: SiteOnDisk) {
  const { weatherFile } = document.site;
  if (!weatherFile) return null;
  const named = `${fileName}: site.weatherFile is ${JSON.stringify(weatherFile)}`;
  return readWeatherFile(readBytes(pathOf(weatherFile), named), weatherFile);
}

export function layoutOf(document: SiteDocument, wanted: string | undefined): string | null {
  if (wanted === undefined) return null;
  const known = layoutNames(document);
  if (known.includes(wanted)) return wanted;
  const there = known.length > 0 ? `one of ${known.map((name) => JSON.stringify(name)).join(', ')}` : 'none';
  throw new BadInputError(`--layout: there is none named ${JSON.stringify(wanted)}; expected ${there}.`);
}

/** Reads the site and what it refers to, checks the call against it, and starts the threads. */
export async function prepare(path: string, options: CommonOptions): Promise<Prepared> {
  const site = readSite(pathFromCaller(path));
  const { document } = site;
  const layout = layoutOf(document, options.layout);
  const frame = siteFrame(document);
  const grid = siteGrid(document, frame, { cellM: options.cell, field: options.field, layout });
  const { fields } = computeArea(document, { field: options.field, layout });
  const weather = readWeatherOf(site);
  const runner = startRunner(options.threads);
  try {
    const { ground } = await readGroundOf(site, frame, runner);
    const { surface } = await readSurfaceOf(site, frame, ground, runner);
    const scene: SceneOptions = {
      year: options.year,
      layout,
      pace: 'usual',
      frame,
      ground,
      surface,
      weather,
    };
    const growthAt = paceSpeeds(runner, { document, options: scene, shelter: USUAL_SHELTER_OPTIONS });
    const speeds = await growthAt('usual');
    return { site, frame, grid, fields, runner, scene: { ...scene, speeds } };
  } catch (error) {
    runner.dispose();
    throw error;
  }
}
