import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import type { BeltAlternative } from '../belts/propose-result.ts';
import type { WindSeason } from '../belts/propose-types.ts';
import { answerWords } from '../belts/propose-words.ts';
import { runProposeBelts } from '../jobs/run-propose-belts.ts';
import { addFeatures } from '../site/actions/add-feature.ts';
import { fieldNamed, takenField } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import { serialiseSite } from '../site/serialise-site.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import { type CommonOptions, heightOption, numberBetween, threadsOption } from './common-options.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { proposalsJson, proposalsText } from './propose-belts-text.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

const AIMS = ['land', 'shade', 'soonest'] as const;
const SEASONS = ['growing', 'rest', 'year'] as const;
/** Light is read on the ground. */
const LIGHT_HEIGHT_M = 0.1;
/** The cells of the maps are not those that are searched on: any size does. */
const CELL_M = 5;

interface ProposeOptions extends GuessOptions, Pick<CommonOptions, 'field' | 'layout' | 'threads'> {
  readonly cut: number;
  readonly over: number;
  readonly year: number;
  readonly season: WindSeason;
  readonly take: (typeof AIMS)[number];
  readonly height: number;
  readonly out?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade propose-belts`: belts that cut the wind as asked, and a site file in which they are planned. */
export function addProposeBeltsCommand(program: Command): void {
  const share = numberBetween(0.01, 1, 'share (0.3 is 30 %)');
  const command = program
    .command('propose-belts')
    .description('belts that cut the wind on a field as asked, with least land or least shade')
    .argument('<site file>', 'site file (.site.geojson)')
    .option('--field <NAME>', 'the field; without: the one that is taken, or the only one')
    .addOption(new Option('--cut <SHARE>', 'by how much the wind is to be cut').default(0.3).argParser(share))
    .addOption(new Option('--over <SHARE>', 'over which share of the field').default(0.7).argParser(share))
    .addOption(
      new Option('--year <N>', 'years after planting by which it is to be so')
        .default(12)
        .argParser(numberBetween(1, 100, 'years', true)),
    )
    .addOption(new Option('--season <SEASON>', 'whose mean wind').default('growing').choices(SEASONS))
    .addOption(new Option('--take <AIM>', 'which of the proposals is written').default('land').choices(AIMS))
    .addOption(heightOption('height above the ground at which the wind is read', 1.5))
    .option('--layout <NAME>', 'one of the alternative layouts; the belts belong to it')
    .option('--out <FILE>', 'site file to write, with the belts planned in it')
    .addOption(threadsOption())
    .option('--json', 'print the proposals as JSON')
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(proposeBelts);
}

async function proposeBelts(path: string, options: ProposeOptions): Promise<void> {
  const prepared = await prepare(path, { ...options, cell: CELL_M, out: '.' });
  const { site, scene, runner } = prepared;
  try {
    const found = await runProposeBelts(
      runner,
      {
        document: site.document,
        wish: {
          fieldId: fieldWanted(site.document, options.field).id,
          cutShare: options.cut,
          overShare: options.over,
          year: options.year,
          season: options.season,
        },
        refused: [],
        scene,
        readingHeightM: options.height,
        galeMps: GALE_MPS,
        options: shelterOptionsOf(options),
        lightHeightM: LIGHT_HEIGHT_M,
      },
      { onProgress: progressLine('belts', options.quiet === true) },
    );
    const taken = takenOf(found.alternatives, options.take);
    if (options.out !== undefined) {
      const belts = taken?.enough ? taken.belts : [];
      const { document } = addFeatures(
        site.document,
        belts.map(({ drawn }) => drawn),
      );
      writeFileSync(pathFromCaller(options.out), serialiseSite(document));
    }
    process.stdout.write(
      options.json ? proposalsJson(found) : proposalsText(found, taken, options.out ?? null),
    );
    // What cannot be reached is an answer, and no fault of the call.
    if (options.json && found.help) process.stderr.write(`${answerWords(found)}\n`);
  } finally {
    runner.dispose();
  }
}

function fieldWanted(document: SiteDocument, name: string | undefined) {
  const field = name === undefined ? takenField(document) : fieldNamed(document, name);
  if (field) return field;
  throw new BadInputError('--field: none is taken and there is more than one; expected the name of a field.');
}

/** The alternative that is best at what was asked; where it is missing, the first. */
const takenOf = (
  alternatives: readonly BeltAlternative[],
  aim: (typeof AIMS)[number],
): BeltAlternative | null => alternatives.find(({ aims }) => aims.includes(aim)) ?? alternatives[0] ?? null;
