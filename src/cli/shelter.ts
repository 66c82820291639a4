import { type Command, Option } from 'commander';
import { shelterFigures } from '../batch/area-figures.ts';
import { fieldMask } from '../batch/area-masks.ts';
import { runShelter } from '../jobs/run-shelter.ts';
import { cellCount } from '../numeric/grid.ts';
import { shelterScene } from '../scene/build-scene.ts';
import { featuresOfKind } from '../site/chosen-features.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import { type CommonOptions, numberBetween, withCommonOptions } from './common-options.ts';
import { computeAll } from './compute-all.ts';
import { shelterTable } from './figures-table.ts';
import { finish, type Raster } from './finish.ts';
import { patchesToSum } from './patches.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';

interface ShelterCommandOptions extends CommonOptions {
  readonly gale: number;
}

/** `leeglade shelter`: share of open wind and gale hours over a site. */
export function addShelterCommand(program: Command): void {
  const command = program
    .command('shelter')
    .description('share of open wind and hours of gale')
    .argument('<site file>', 'site file (.site.geojson)');
  withCommonOptions(command, 1.5)
    .addOption(
      // Beaufort 6 begins at 10.8 m/s.
      new Option('--gale <MPS>', 'open wind at 10 m that counts as a gale, in metres a second')
        .default(10.8)
        .argParser(numberBetween(0.1, 100, 'metres a second')),
    )
    .action(shelter);
}

async function shelter(path: string, options: ShelterCommandOptions): Promise<void> {
  const startedMs = Date.now();
  const prepared = await prepare(path, options);
  const { site, frame, grid, fields, scene: sceneOptions, runner } = prepared;
  try {
    const { scene, assumed } = shelterScene(site.document, sceneOptions);
    // A patch's layer says where light is read, not wind: only a height that is given counts here.
    const given = new Map(
      featuresOfKind(site.document.features, 'patch').map((patch) => [
        patch.id,
        patch.properties.readingHeightM,
      ]),
    );
    const patches = patchesToSum(prepared, options.height, (patch) => given.get(patch.id) ?? options.height);
    const guesses = { obliqueWind: true, shortThings: true, youngBelts: true, endsAndGaps: true };
    const progress = progressLine('shelter', options.quiet === true);
    const { main, ofPatches } = await computeAll(
      grid,
      options.height,
      patches,
      progress,
      (part, readingHeightM, run) =>
        runShelter(
          runner,
          { scene, grid: part, readingHeightM, galeMps: options.gale, options: guesses },
          run,
        ),
    );
    finish(prepared, options, startedMs, {
      assumed,
      directions: main.directions,
      rasters: shelterRasters(main, options.gale),
      fields: fields.map((field) => {
        const { mask, ...head } = fieldMask(field, frame, grid);
        return { ...head, ...shelterFigures(main, mask, head.areaM2) };
      }),
      patches: ofPatches.map(({ patch, result }) => ({
        id: patch.id,
        name: patch.name,
        areaM2: patch.areaM2,
        ...shelterFigures(result, patch.mask, patch.areaM2),
      })),
      table: shelterTable,
    });
  } finally {
    runner.dispose();
  }
}

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
