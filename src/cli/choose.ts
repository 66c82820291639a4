import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import { type Choice, choiceOf, choosingOf } from '../choose/choice.ts';
import { METRIC } from '../choose/measure-words.ts';
import { runChoose } from '../jobs/run-choose.ts';
import { runChooseEnds } from '../jobs/run-choose-ends.ts';
import { choosePage } from '../sheets/choose-page.ts';
import type { PaperSize } from '../sheets/paper.ts';
import { featuresOfKind, fieldNamed } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { dayWords } from '../sun/day-words.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import { type ChooseRun, chooseCsv, chooseJson, chooseText } from './choose-text.ts';
import {
  type CommonOptions,
  heightOption,
  layoutOption,
  numberBetween,
  threadsOption,
} from './common-options.ts';
import { paperOption } from './page-options.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { readSite } from './read-files.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';
import { writePdf } from './write-pdf.ts';

/** Light is read on the ground. */
const LIGHT_HEIGHT_M = 0.1;
/** Part of the work that the fields themselves are, about; the rest is what is not known of them. */
const FIELDS_PART = 0.7;

interface ChooseOptions
  extends GuessOptions,
    Pick<CommonOptions, 'cell' | 'height' | 'layout' | 'out' | 'threads'> {
  readonly fields?: readonly string[];
  readonly paper: PaperSize;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

const fieldNames = (text: string): string[] =>
  text
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** `leeglade choose`: fields side by side, what knocks one out, and how firm a choice between them is. */
export function addChooseCommand(program: Command): void {
  const command = program
    .command('choose')
    .description('compares fields: light, shelter, frost, slope, edges of others; what knocks out; how firm')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(
      new Option('--cell <M>', 'size of a cell in metres')
        .default(2)
        .argParser(numberBetween(0.5, 50, 'metres')),
    )
    .addOption(new Option('--fields <A,B>', 'names or ids of the fields; all without').argParser(fieldNames))
    .addOption(heightOption('height above the ground at which the wind is read', 1.5))
    .addOption(layoutOption())
    .addOption(
      new Option('--out <DIR>', 'folder for the table and the page').default('.').argParser(pathFromCaller),
    )
    .addOption(paperOption())
    .option('--json', 'print the answer as JSON')
    .addOption(threadsOption())
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(choose);
}

async function choose(path: string, options: ChooseOptions): Promise<void> {
  const startedMs = Date.now();
  const { document, fileName } = readSite(pathFromCaller(path));
  const fields = wantedFields(document, fileName, options.fields);
  const { site, scene, runner } = await prepare(path, { ...options, year: 0 });
  try {
    const { order, enough } = choosingOf(document);
    const request = {
      document: site.document,
      options: scene,
      fields,
      cellM: options.cell,
      reading: {
        readingHeightM: options.height,
        galeMps: GALE_MPS,
        options: shelterOptionsOf(options),
      },
      lightHeightM: LIGHT_HEIGHT_M,
      enough,
    };
    const tell = progressLine('choose', options.quiet === true);
    const found = await runChoose(runner, request, { onProgress: (done) => tell(FIELDS_PART * done) });
    const atEnds = await runChooseEnds(runner, request, found.fields, order, {
      onProgress: (done) => tell(FIELDS_PART + (1 - FIELDS_PART) * done),
    });
    const choice = choiceOf(document, found.fields, atEnds);
    const run: ChooseRun = {
      layout: scene.layout,
      cellM: options.cell,
      elapsedMs: Date.now() - startedMs,
      files: ['choose.csv', 'choose.json', 'choose.pdf'],
      out: options.out,
    };
    const json = write(choice, run, options.paper, document);
    process.stdout.write(options.json ? json : chooseText(choice, run));
  } finally {
    runner.dispose();
  }
}

function wantedFields(
  document: SiteDocument,
  fileName: string,
  names: readonly string[] | undefined,
): readonly FieldFeature[] {
  const all = featuresOfKind(document.features, 'field');
  if (all.length === 0)
    throw new BadInputError(`${fileName}: no field is drawn; expected one or more to choose from.`);
  if (names === undefined) return all;
  if (names.length === 0)
    throw new BadInputError('--fields: no name is given; expected names of fields with commas between.');
  return [...new Set(names.map((name) => fieldNamed(document, name)))];
}

/** @returns what was written as JSON. */
function write(choice: Choice, run: ChooseRun, paper: PaperSize, { site }: SiteDocument): string {
  mkdirSync(run.out, { recursive: true });
  const json = chooseJson(choice, run);
  writeFileSync(join(run.out, 'choose.json'), json);
  writeFileSync(join(run.out, 'choose.csv'), chooseCsv(choice));
  const madeOn = dayWords(clockOfUtc(Date.now(), site.timeZone).date);
  writePdf(join(run.out, 'choose.pdf'), [
    choosePage({ paper, choice, layout: run.layout, units: METRIC, madeOn }),
  ]);
  return json;
}
