import { type Command, Option } from 'commander';
import { shelterFigures } from '../batch/area-figures.ts';
import { fieldMask } from '../batch/area-masks.ts';
import { evaporationFigures } from '../batch/evaporation-figures.ts';
import { whatWouldChange } from '../batch/what-would-change.ts';
import { exposureOf } from '../geo/mean-exposure.ts';
import { runShelter } from '../jobs/run-shelter.ts';
import { runShelterEnds } from '../jobs/run-shelter-ends.ts';
import { cellCount } from '../numeric/grid.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { atEnd, CAUSES, SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import { siteEvaporation } from '../scene/site-evaporation.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import { departureInWords } from '../wind/shelter-guesses.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import { type CommonOptions, numberBetween, withCommonOptions } from './common-options.ts';
import { computeAll } from './compute-all.ts';
import { type EndOptions, withEndOptions } from './end-options.ts';
import { type FelledOptions, felledInWords, felledOf, withFelledOptions } from './felled-options.ts';
import { evaporationLines, shelterTable } from './figures-table.ts';
import { finish, type Raster } from './finish.ts';
import { patchesToSum } from './patches.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

interface ShelterCommandOptions extends CommonOptions, EndOptions, GuessOptions, FelledOptions {
  readonly gale: number;
}

/** `leeglade shelter`: share of open wind and gale hours over a site. */
export function addShelterCommand(program: Command): void {
  const command = program
    .command('shelter')
    .description('share of open wind and hours of gale')
    .argument('<site file>', 'site file (.site.geojson)');
  withFelledOptions(withGuessOptions(withEndOptions(withCommonOptions(command, 1.5), SCENE_ENDS)))
    .addOption(
      new Option('--gale <MPS>', 'open wind at 10 m that counts as a gale, in metres a second')
        .default(GALE_MPS)
        .argParser(numberBetween(0.1, 100, 'metres a second')),
    )
    .action(shelter);
}

async function shelter(path: string, options: ShelterCommandOptions): Promise<void> {
  const startedMs = Date.now();
  const prepared = await prepare(path, options);
  const { site, frame, grid, fields, runner } = prepared;
  try {
    const felled = felledOf(site.document, prepared.scene.layout, options);
    const expected = { ...prepared.scene, felled };
    const sceneAt = (end: SceneEnd | null) => shelterScene(site.document, atEnd(expected, end));
    const { scene, assumed } = sceneAt(options.end ?? null);
    // A patch's layer says where light is read, not wind: only a height that is given counts here.
    const given = new Map(
      featuresOfKind(site.document.features, 'patch').map((patch) => [
        patch.id,
        patch.properties.readingHeightM,
      ]),
    );
    const patches = patchesToSum(prepared, options.height, (patch) => given.get(patch.id) ?? options.height);
    const engineOptions = shelterOptionsOf(options);
    const departure = departureInWords(engineOptions);
    const asked = {
      readingHeightM: options.height,
      galeMps: options.gale,
      options: engineOptions,
    };
    const progress = progressLine('shelter', options.quiet === true);
    const { main, ofPatches } = await computeAll(
      grid,
      options.height,
      patches,
      progress,
      (part, readingHeightM, run) => runShelter(runner, { ...asked, scene, grid: part, readingHeightM }, run),
    );
    const masks = fields.map((field) => fieldMask(field, frame, grid));
    const ends =
      options.ends &&
      (await runShelterEnds(
        runner,
        (end) => sceneAt(end).scene,
        { ...asked, grid },
        seasonShare,
        { onProgress: progressLine('shelter at each end', options.quiet === true) },
        seasonShare(main),
      ));
    const evaporation = siteEvaporation(site.document, expected, scene.climate);
    const figures = (result: ShelterResult, mask: Uint8Array, areaM2: number) => ({
      ...shelterFigures(result, mask, areaM2),
      evaporationSeason: evaporation.curve
        ? evaporationFigures(result, mask, evaporation.curve.seasonMm)
        : null,
    });
    finish(prepared, options, startedMs, {
      assumed: [
        ...assumed,
        ...(departure ? [departure] : []),
        ...(felled ? [felledInWords(site.document, felled)] : []),
      ],
      directions: main.directions,
      rasters: shelterRasters(main, options.gale),
      fields: masks.map(({ mask, ...head }) => ({
        ...head,
        ...figures(main, mask, head.areaM2),
        horizonSumDeg: exposureOf(scene.ground, grid, mask, frame.convergenceRad),
      })),
      patches: ofPatches.map(({ patch, result }) => ({
        id: patch.id,
        name: patch.name,
        areaM2: patch.areaM2,
        ...figures(result, patch.mask, patch.areaM2),
      })),
      whatWouldChangeIt: ends ? whatWouldChange('windShareSeason', ends, masks, CAUSES, null) : null,
      lines: evaporationLines(evaporation),
      table: shelterTable,
    });
  } finally {
    runner.dispose();
  }
}

const seasonShare = ({ grid, windShare }: ShelterResult): Float32Array => windShare.slice(0, cellCount(grid));

function shelterRasters(result: ShelterResult, galeMps: number): Raster[] {
  const cells = cellCount(result.grid);
  const bands = (values: Float32Array, words: string) =>
    ['growing season', 'rest of the year', 'year'].map((season, i) => ({
      name: `${season}, ${words}`,
      values: values.subarray(i * cells, (i + 1) * cells),
    }));
  return [
    { file: 'wind-share.tif', bands: bands(result.windShare, 'share of open wind') },
    { file: 'gale-hours.tif', bands: bands(result.galeHours, `hours of wind of ${galeMps} m/s or more`) },
  ];
}
