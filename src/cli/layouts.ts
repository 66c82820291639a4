import { type Command, Option } from 'commander';
import { type LayoutsRequest, layoutSpeeds, runCompareLayouts } from '../jobs/run-compare-layouts.ts';
import { comparedField } from '../layouts/compared-field.ts';
import { USUAL_SHELTERED_SHARE } from '../layouts/comparison.ts';
import { layoutNames } from '../site/layout-names.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import {
  type CommonOptions,
  heightOption,
  numberBetween,
  threadsOption,
  yearOption,
} from './common-options.ts';
import { layoutListJson, layoutListText, layoutsCsv, layoutsJson, layoutsText } from './layouts-text.ts';
import { layoutOf, prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { readSite, type SiteOnDisk } from './read-files.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

/** Light is read on the ground. */
const LIGHT_HEIGHT_M = 0.1;
/** The figures have cells of their own: any size does. */
const CELL_M = 5;

interface LayoutsOptions extends GuessOptions, Pick<CommonOptions, 'year' | 'field' | 'threads'> {
  readonly share: number;
  readonly height: number;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade layouts`: the layouts of a site; or what differs between two of them. */
export function addLayoutsCommand(program: Command): void {
  const command = program
    .command('layouts')
    .description('the layouts of a site, or what differs between two of them')
    .argument('<site file>', 'site file (.site.geojson)')
    .argument('[layout]', 'one of the two that are compared')
    .argument('[other]', 'the other')
    .addOption(yearOption('years after planting of which light and shelter are told'))
    .addOption(
      new Option('--share <SHARE>', 'share of the field that is to be in shelter')
        .default(USUAL_SHELTERED_SHARE)
        .argParser(numberBetween(0.01, 1, 'share (0.5 is half of the field)')),
    )
    .addOption(heightOption('height above the ground at which the wind is read', 1.5))
    .option('--field <NAME>', 'the field they are compared on; that on which most of them stands otherwise')
    .option('--json', 'print the answer as JSON')
    .addOption(new Option('--csv', 'print the table as CSV').conflicts('json'))
    .addOption(threadsOption())
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(layouts);
}

async function layouts(
  path: string,
  one: string | undefined,
  other: string | undefined,
  options: LayoutsOptions,
): Promise<void> {
  const onDisk = readSite(pathFromCaller(path));
  if (one === undefined) {
    process.stdout.write(listOf(onDisk, options));
    return;
  }
  if (other === undefined) throw new BadInputError(twoWanted(onDisk, one));
  const pair = [layoutOf(onDisk.document, one), layoutOf(onDisk.document, other)] as const;
  const field = comparedField(onDisk.document, pair, options.field);
  if (!field)
    throw new BadInputError(`${onDisk.fileName}: no field is drawn; expected one to compare them on.`);
  const { site, frame, scene, runner } = await prepare(path, { ...options, cell: CELL_M, out: '.' });
  try {
    const sceneAt: LayoutsRequest['sceneAt'] = (layout, year, pace) => ({
      ...scene,
      layout,
      year,
      pace,
      speeds: null,
    });
    const shelter = shelterOptionsOf(options);
    const comparison = await runCompareLayouts(
      runner,
      {
        document: site.document,
        frame,
        field,
        sceneAt,
        speedsOf: layoutSpeeds(runner, site.document, shelter, sceneAt),
        wind: { readingHeightM: options.height, galeMps: GALE_MPS, options: shelter },
        lightHeightM: LIGHT_HEIGHT_M,
      },
      { layouts: pair, year: options.year, wantedShare: options.share },
      { onProgress: progressLine('layouts', options.quiet === true) },
    );
    const says = options.json ? layoutsJson : options.csv ? layoutsCsv : layoutsText;
    process.stdout.write(says(comparison, site.document.site.name));
  } finally {
    runner.dispose();
  }
}

const listOf = ({ document }: SiteOnDisk, { json, csv }: LayoutsOptions): string => {
  if (csv) throw new BadInputError('--csv: expected the names of two layouts, whose table is printed.');
  return json ? layoutListJson(document) : layoutListText(document);
};

function twoWanted({ document, fileName }: SiteOnDisk, one: string): string {
  const others = layoutNames(document).filter((name) => name !== one);
  const there = others.length > 0 ? `, such as ${JSON.stringify(others[0])}` : '';
  return `${fileName}: one layout is named, ${JSON.stringify(one)}; expected two to compare${there}.`;
}
