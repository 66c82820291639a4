import type { Command } from 'commander';
import { areaShareWithLight, lightFigures } from '../batch/area-figures.ts';
import { fieldMask } from '../batch/area-masks.ts';
import { whatWouldChange } from '../batch/what-would-change.ts';
import { runFirstLastSun } from '../jobs/run-first-last-sun.ts';
import { runLight } from '../jobs/run-light.ts';
import { runLightEnds } from '../jobs/run-light-ends.ts';
import type { LightResult } from '../light/light-types.ts';
import { cellCount } from '../numeric/grid.ts';
import { lightScene } from '../scene/build-scene.ts';
import { atEnd, CAUSES, SCENE_ENDS, type SceneEnd } from '../scene/ends.ts';
import { MONTHS } from '../units/months.ts';
import { type CommonOptions, withCommonOptions } from './common-options.ts';
import { computeAll } from './compute-all.ts';
import { type EndOptions, withEndOptions } from './end-options.ts';
import { lightTable } from './figures-table.ts';
import { finish, type Raster } from './finish.ts';
import { firstLastFound } from './first-last.ts';
import { patchesToSum } from './patches.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';

/** `leeglade light`: direct hours, share of open light and daily light integral over a site. */
export function addLightCommand(program: Command): void {
  const command = program
    .command('light')
    .description('direct hours and share of open light')
    .argument('<site file>', 'site file (.site.geojson)');
  withEndOptions(withCommonOptions(command, 0.1), SCENE_ENDS)
    .option('--first-last', 'first and last sun of the day too, on the middle day of each month')
    .action(light);
}

interface LightCommandOptions extends CommonOptions, EndOptions {
  readonly firstLast?: boolean;
}

async function light(path: string, options: LightCommandOptions): Promise<void> {
  const startedMs = Date.now();
  const prepared = await prepare(path, options);
  const { site, frame, grid, fields, scene: expected, runner } = prepared;
  try {
    const sceneAt = (end: SceneEnd | null) => lightScene(site.document, atEnd(expected, end));
    const { scene, assumed } = sceneAt(options.end ?? null);
    const patches = patchesToSum(prepared, options.height, (patch) => patch.readingHeightM);
    const progress = progressLine('light', options.quiet === true);
    const { main, ofPatches } = await computeAll(
      grid,
      options.height,
      patches,
      progress,
      (part, readingHeightM, run) => runLight(runner, { scene, grid: part, readingHeightM }, run),
    );
    const masks = fields.map((field) => fieldMask(field, frame, grid));
    const firstLast =
      options.firstLast &&
      firstLastFound(
        await runFirstLastSun(
          runner,
          { scene, grid, readingHeightM: options.height },
          { onProgress: progressLine('first and last sun', options.quiet === true) },
        ),
        masks,
        scene.timeZone,
      );
    const ends =
      options.ends &&
      (await runLightEnds(
        runner,
        (end) => sceneAt(end).scene,
        { grid, readingHeightM: options.height },
        seasonShare,
        { onProgress: progressLine('light at each end', options.quiet === true) },
        seasonShare(main),
      ));
    finish(prepared, options, startedMs, {
      assumed,
      directions: main.directions,
      quadratureError: main.quadratureError,
      rasters: [...lightRasters(main), ...(firstLast ? firstLast.rasters : [])],
      texts: firstLast ? firstLast.texts : [],
      lines: firstLast ? firstLast.lines : [],
      fields: masks.map(({ mask, ...head }) => ({
        ...head,
        ...lightFigures(main, mask, scene.calendarYear),
      })),
      patches: ofPatches.map(({ patch, result }) => {
        const share = areaShareWithLight(result, patch.mask, patch.shareToKeep);
        return {
          id: patch.id,
          name: patch.name,
          areaM2: patch.areaM2,
          ...lightFigures(result, patch.mask, scene.calendarYear),
          enoughLight: share >= patch.areaShare,
          areaShareWithEnoughLight: share,
        };
      }),
      whatWouldChangeIt: ends
        ? // Stated of direct hours; of all light it is a part of that, so this is its upper end.
          whatWouldChange('lightShareSeason', ends, masks, CAUSES, main.quadratureError)
        : null,
      table: lightTable,
    });
  } finally {
    runner.dispose();
  }
}

const seasonShare = ({ grid, lightShare }: LightResult): Float32Array =>
  lightShare.slice(MONTHS.length * cellCount(grid));

function lightRasters(result: LightResult): Raster[] {
  const cells = cellCount(result.grid);
  const bands = (values: Float32Array, names: readonly string[]) =>
    names.map((name, i) => ({ name, values: values.subarray(i * cells, (i + 1) * cells) }));
  const withUnit = (unit: string) => MONTHS.map((month) => `${month}, ${unit}`);
  return [
    { file: 'direct-hours.tif', bands: bands(result.directHours, withUnit('hours of direct sun')) },
    {
      file: 'open-hours.tif',
      bands: bands(result.openHours, withUnit('hours of direct sun with terrain alone')),
    },
    {
      file: 'light-share.tif',
      bands: bands(result.lightShare, [
        ...withUnit('share of open light'),
        'growing season, share of open light',
      ]),
    },
    {
      file: 'daily-light-integral.tif',
      bands: bands(result.dailyLightIntegral, withUnit('daily light integral, mol m-2 d-1')),
    },
  ];
}
