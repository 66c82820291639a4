import { type Command, Option } from 'commander';
import { toLocal } from '../geo/frame.ts';
import { createLocalRunner } from '../jobs/local-runner.ts';
import { runShelterAt } from '../jobs/run-shelter-at.ts';
import { shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import { ownersOf } from '../scene/owners.ts';
import { siteEvaporation } from '../scene/site-evaporation.ts';
import { siteFrame } from '../scene/site-ground.ts';
import { pathFromCaller } from './caller-path.ts';
import { heightOption, layoutOption, numberBetween, spotOption, yearOption } from './common-options.ts';
import { layoutOf, readGroundOf, readWeatherOf } from './prepare.ts';
import { progressLine } from './progress.ts';
import { readSite } from './read-files.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';
import { spotOf } from './spot-of.ts';
import { type WindAtPage, windAtJson, windAtText } from './wind-at-text.ts';

interface WindAtOptions extends GuessOptions {
  readonly at: string;
  readonly year: number;
  readonly height: number;
  readonly gale: number;
  readonly layout?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade wind-at`: from which directions a spot is sheltered, by what, and what each thing is worth there. */
export function addWindAtCommand(program: Command): void {
  const command = program
    .command('wind-at')
    .description('from which directions a spot is sheltered, by what, and what each thing is worth there')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(spotOption())
    .addOption(yearOption())
    .addOption(heightOption('height above the ground at which the wind is read', 1.5))
    .addOption(
      new Option('--gale <MPS>', 'open wind at 10 m that counts as a gale, in metres a second')
        .default(GALE_MPS)
        .argParser(numberBetween(0.1, 100, 'metres a second')),
    )
    .addOption(layoutOption())
    .option('--json', 'print the answer as JSON')
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(windAt);
}

async function windAt(path: string, options: WindAtOptions): Promise<void> {
  const onDisk = readSite(pathFromCaller(path));
  const { document } = onDisk;
  const lonLat = spotOf(options.at, onDisk);
  const layout = layoutOf(document, options.layout);
  const frame = siteFrame(document);
  const runner = createLocalRunner();
  const { ground } = await readGroundOf(onDisk, frame, runner);
  const moment: SceneOptions = {
    year: options.year,
    layout,
    pace: 'usual',
    frame,
    ground,
    weather: readWeatherOf(onDisk),
  };
  const { scene, things, assumed } = shelterScene(document, moment);
  const [xM, yM] = toLocal(frame, lonLat);
  const progress = progressLine('wind', options.quiet === true);
  const found = await runShelterAt(
    runner,
    {
      scene,
      things,
      owners: ownersOf(document),
      xM,
      yM,
      readingHeightM: options.height,
      galeMps: options.gale,
      options: shelterOptionsOf(options),
    },
    { onProgress: progress },
  );
  progress(1);
  const page: WindAtPage = {
    siteName: document.site.name,
    year: options.year,
    calendarYear: document.site.baseYear + options.year,
    layout,
    lonLat,
    assumed,
    found,
    evaporation: siteEvaporation(document, moment, scene.climate),
  };
  process.stdout.write(options.json ? windAtJson(page) : windAtText(page));
}
