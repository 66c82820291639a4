import { type Command, Option } from 'commander';
import { edgeNeeds } from '../choose/edge-needs.ts';
import { isEdge } from '../choose/edge-setting.ts';
import type { EdgeNeeds } from '../choose/edge-types.ts';
import { runEdgeProfile } from '../jobs/run-edge-profile.ts';
import { findThing } from '../outside/find-thing.ts';
import { labelOf } from '../scene/things.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type CommonOptions, layoutOption, numberBetween, threadsOption } from './common-options.ts';
import { edgeCsv, edgeJson, edgeText } from './edge-text.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

interface EdgeOptions
  extends GuessOptions,
    Pick<CommonOptions, 'field' | 'layout' | 'json' | 'threads' | 'quiet'> {
  readonly edge: string;
  readonly csv?: boolean;
  readonly sunLight?: number;
  readonly shadeLight?: number;
  readonly windCut?: number;
}

const WIND_HEIGHT_M = 1.5;
const LIGHT_HEIGHT_M = 0.1;

const needOption = (flag: string, what: string): Option =>
  new Option(flag, what).argParser(numberBetween(0, 1, 'a whole'));

/** `leeglade edge`: light, shelter and both by the distance from a belt, wood or wall. */
export function addEdgeCommand(program: Command): void {
  const command = program
    .command('edge')
    .description('light, shelter and both by the distance from a belt, wood or wall, now and in year 20')
    .argument('<site file>', 'site file (.site.geojson)')
    .requiredOption('--edge <ID>', 'id or name of a belt, wood, wall, fence or net')
    .option('--field <NAME>', 'the field beside it; the one with most ground close to it otherwise')
    .addOption(layoutOption())
    .addOption(
      needOption('--sun-light <SHARE>', 'light that sun lovers want; where fruiting light begins otherwise'),
    )
    .addOption(
      needOption(
        '--shade-light <SHARE>',
        'light that shade-tolerant plants want; where half shade begins otherwise',
      ),
    )
    .addOption(
      needOption('--wind-cut <SHARE>', 'by how much the wind must be cut to be enough; 0.3 otherwise'),
    )
    .addOption(new Option('--json', 'print the answer as JSON').conflicts('csv'))
    .option('--csv', 'print a table of all distances')
    .addOption(threadsOption())
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(edge);
}

async function edge(path: string, options: EdgeOptions): Promise<void> {
  const { site, fields, scene, runner } = await prepare(path, {
    ...options,
    year: 0,
    cell: 1,
    height: WIND_HEIGHT_M,
    out: '.',
  });
  try {
    const { document } = site;
    const thing = findThing(document, scene.layout, options.edge, isEdge, 'belt, wood or wall');
    const usual = edgeNeeds(document.site);
    const needs: EdgeNeeds = {
      sunLight: options.sunLight ?? usual.sunLight,
      shadeLight: options.shadeLight ?? usual.shadeLight,
      windCut: options.windCut ?? usual.windCut,
    };
    if (needs.shadeLight > needs.sunLight)
      throw new BadInputError(
        `--shade-light is ${needs.shadeLight} and --sun-light ${needs.sunLight}; expected shade-tolerant plants to want no more light than sun lovers.`,
      );
    const profile = await runEdgeProfile(
      runner,
      {
        document,
        options: scene,
        edge: thing,
        fields,
        reading: { readingHeightM: WIND_HEIGHT_M, galeMps: GALE_MPS, options: shelterOptionsOf(options) },
        lightHeightM: LIGHT_HEIGHT_M,
        needs,
      },
      { onProgress: progressLine('beside the edge', options.quiet === true) },
    );
    const label = labelOf(document, thing);
    if (!profile || profile.sides.length === 0)
      throw new BadInputError(
        `--edge is ${JSON.stringify(options.edge)}: no ${options.field === undefined ? 'field' : `ground of ${JSON.stringify(options.field)}`} lies beside ${label} within its shelter in year 0 or 20; expected an edge beside a field.`,
      );
    const name = document.site.name;
    const text = options.json
      ? edgeJson(name, profile)
      : options.csv
        ? edgeCsv(profile)
        : edgeText(name, profile);
    process.stdout.write(text);
  } finally {
    runner.dispose();
  }
}
