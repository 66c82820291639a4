import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import type { CutWay, WinterCuts } from '../cuts/cut-result.ts';
import { CUT_AIMS, type CutAim } from '../cuts/cut-types.ts';
import { runWinterCuts } from '../jobs/run-winter-cuts.ts';
import { patchMasks } from '../scene/patch-masks.ts';
import { addCare } from '../site/actions/add-care.ts';
import { takenField } from '../site/chosen-features.ts';
import { serialiseSite } from '../site/serialise-site.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import {
  type CommonOptions,
  heightOption,
  layoutOption,
  numberBetween,
  severalTimes,
  threadsOption,
} from './common-options.ts';
import { cutsJson, cutsText } from './cuts-text.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

/** Wind is read at the height of fruit bushes. */
const WIND_HEIGHT_M = 1.5;
/** The cells of the maps are not those of the patches: any size does. */
const CELL_M = 5;
/** Patches on the cells that the screen has, so that both say the same. */
const FINEST_CELL_M = 0.5;
const MOST_CELLS = 300;

interface CutsOptions extends GuessOptions, Pick<CommonOptions, 'field' | 'layout' | 'threads'> {
  readonly year: number;
  readonly height: number;
  readonly spare: readonly string[];
  readonly accept?: CutAim;
  readonly out?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade cuts`: the few cuts of a winter that bring the light back, and a site file in which they are written. */
export function addCutsCommand(program: Command): void {
  const command = program
    .command('cuts')
    .description('the few cuts of one winter that keep every patch bright for five more years')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(
      new Option('--year <N>', 'years after planting: the season that follows the winter of the work')
        .default(20)
        .argParser(numberBetween(0, 195, 'years', true)),
    )
    .option('--field <NAME>', 'the field; without: the one that is taken, or all')
    .addOption(layoutOption())
    .addOption(
      new Option('--spare <ID>', 'a plant that is not to be cut; may be given several times')
        .default([], 'none')
        .argParser(severalTimes),
    )
    .addOption(
      heightOption('height above the ground at which light is read, where a patch says nothing', 0.1),
    )
    .addOption(new Option('--accept <WAY>', 'which of the ways is written').choices(CUT_AIMS))
    .option('--out <FILE>', 'site file to write, with the cuts in it')
    .addOption(threadsOption())
    .option('--json', 'print the ways as JSON')
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(cuts);
}

async function cuts(path: string, options: CutsOptions): Promise<void> {
  if ((options.accept === undefined) !== (options.out === undefined))
    throw new BadInputError(
      '--accept and --out belong together: which way is accepted, and the file to write.',
    );
  const { site, scene, fields, frame, runner } = await prepare(path, { ...options, cell: CELL_M, out: '.' });
  const { document } = site;
  try {
    const ids = new Map(document.features.map(({ id }) => [String(id), id]));
    const taken = options.field === undefined ? takenField(document) : (fields[0] ?? null);
    const found = await runWinterCuts(
      runner,
      {
        document,
        wish: { year: options.year, refused: options.spare.map((id) => sparedId(ids, id)) },
        scene,
        patches: patchMasks(document, {
          frame,
          layout: scene.layout,
          fields: taken ? [taken] : fields,
          readingHeightM: options.height,
          cellM: FINEST_CELL_M,
          mostCells: MOST_CELLS,
        }),
        field: taken,
        windHeightM: WIND_HEIGHT_M,
        galeMps: GALE_MPS,
        shelter: shelterOptionsOf(options),
      },
      { onProgress: progressLine('cuts', options.quiet === true) },
    );
    const way = options.accept === undefined ? null : acceptedWay(found, options.accept);
    if (options.out !== undefined) {
      const written = (way?.cuts ?? []).reduce(
        (site, { plant, option }) => addCare(site, [plant.id], option.care as Parameters<typeof addCare>[2]),
        document,
      );
      writeFileSync(pathFromCaller(options.out), serialiseSite(written));
    }
    process.stdout.write(options.json ? cutsJson(found) : cutsText(found, way, options.out ?? null));
  } finally {
    runner.dispose();
  }
}

function sparedId<Id>(ids: ReadonlyMap<string, Id>, wanted: string): Id {
  const id = ids.get(wanted);
  if (id !== undefined) return id;
  throw new BadInputError(`--spare: there is no feature with the id ${JSON.stringify(wanted)}.`);
}

/** The way that is best at what was asked; null where nothing is to be cut. */
function acceptedWay({ ways }: WinterCuts, aim: CutAim): CutWay | null {
  if (ways.length === 0) return null;
  const way = ways.find(({ aims }) => aims.includes(aim));
  if (way) return way;
  const there = ways.flatMap(({ aims }) => aims).join(', ');
  throw new BadInputError(`--accept: no way was found for ${JSON.stringify(aim)}; expected one of ${there}.`);
}
