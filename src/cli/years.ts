import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { runDarkeners } from '../jobs/run-darkeners.ts';
import { runOutlook } from '../jobs/run-outlook.ts';
import { paceSpeeds } from '../jobs/run-step-years.ts';
import { createYearsLook } from '../jobs/run-years-look.ts';
import { lightScene } from '../scene/build-scene.ts';
import { patchMasks } from '../scene/patch-masks.ts';
import { fieldNamed, takenField } from '../site/chosen-features.ts';
import { BadInputError } from '../units/bad-input.ts';
import type { YearsLook } from '../years/years-look-types.ts';
import { pathFromCaller } from './caller-path.ts';
import { type CommonOptions, layoutOption, threadsOption } from './common-options.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';
import { yearsCsv, yearsJson, yearsText } from './years-text.ts';

/** Light is read on the ground, wind at breast height. */
const LIGHT_HEIGHT_M = 0.1;
const WIND_HEIGHT_M = 1.5;
/** Cells are chosen from the size of the field; of the patches as in the app. */
const CELL_M = 5;
const PATCH_CELL_M = 0.5;
const MOST_PATCH_CELLS = 300;
/** Years of the patches that are looked at; when one turns dark is found between them. */
const PATCH_YEARS = [0, 5, 10, 15, 20, 25, 30, 35, 40];
/** Part of the time that the field takes. */
const FIELD_PART = 0.8;

interface YearsOptions extends GuessOptions, Pick<CommonOptions, 'field' | 'layout' | 'threads'> {
  readonly json?: boolean;
  readonly csv?: string;
  readonly quiet?: boolean;
}

/** `leeglade years`: a field from year 0 to 40. */
export function addYearsCommand(program: Command): void {
  const command = program
    .command('years')
    .description(
      'a field from year 0 to 40: shelter, light, canopy, first crops, which patch turns dark by what',
    )
    .argument('<site file>', 'site file (.site.geojson)')
    .option('--field <NAME>', 'the field; the one that is taken otherwise')
    .addOption(layoutOption())
    .option('--json', 'print the years as JSON')
    .addOption(new Option('--csv <FILE>', 'writes every year as a table as well').argParser(pathFromCaller))
    .addOption(threadsOption())
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(years);
}

async function years(path: string, options: YearsOptions): Promise<void> {
  const prepared = await prepare(path, {
    ...options,
    year: 0,
    height: LIGHT_HEIGHT_M,
    cell: CELL_M,
    out: '.',
  });
  const { site, frame, scene, runner } = prepared;
  const { document, fileName } = site;
  try {
    const field =
      options.field === undefined
        ? (takenField(document) ?? prepared.fields[0])
        : fieldNamed(document, options.field);
    if (!field) throw new BadInputError(`${fileName}: no field is drawn; expected one to follow.`);
    const shelter = shelterOptionsOf(options);
    const tell = progressLine('years', options.quiet === true);
    const passes = createYearsLook(runner)(
      {
        document,
        layout: scene.layout,
        frame,
        field,
        optionsAt: (year) => ({ ...scene, year }),
        speedsAt: paceSpeeds(runner, { document, options: { ...scene, speeds: null }, shelter }),
        reading: { readingHeightM: WIND_HEIGHT_M, galeMps: GALE_MPS, options: shelter },
        lightHeightM: LIGHT_HEIGHT_M,
      },
      true,
    );
    let look: YearsLook | null = null;
    for (const [k, pass] of passes.entries())
      look = await pass({ onProgress: (done) => tell((FIELD_PART * (k + done)) / passes.length) });
    const patches = patchMasks(document, {
      frame,
      layout: scene.layout,
      fields: [field],
      readingHeightM: LIGHT_HEIGHT_M,
      cellM: PATCH_CELL_M,
      mostCells: MOST_PATCH_CELLS,
    });
    const builtAt = (year: number) => lightScene(document, { ...scene, year });
    const found = await runOutlook(runner, patches, PATCH_YEARS, (year) => builtAt(year).scene, {
      onProgress: (done) => tell(FIELD_PART + (1 - FIELD_PART) * done),
    });
    const turns = await runDarkeners(runner, patches, found, builtAt);
    tell(1);
    const answer = {
      site: document.site,
      layout: scene.layout,
      // The passes end with the whole look.
      look: look as YearsLook,
      patches: patches.map(({ id, name }, i) => ({ id, name, years: turns[i] })),
    };
    if (options.csv !== undefined) writeFileSync(options.csv, yearsCsv(answer));
    process.stdout.write(options.json ? yearsJson(answer) : yearsText(answer, options.csv ?? null));
  } finally {
    runner.dispose();
  }
}
