import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { careList } from '../scene/care-list.ts';
import { siteCentre } from '../scene/site-ground.ts';
import { MAX_YEAR, MIN_YEAR } from '../site/records/common-fields.ts';
import { BadInputError } from '../units/bad-input.ts';
import { pathFromCaller } from './caller-path.ts';
import { type CareAnswer, careCsv, careJson, careText } from './care-text.ts';
import { layoutOption, numberBetween } from './common-options.ts';
import { layoutOf } from './prepare.ts';
import { readSite } from './read-files.ts';

interface CareOptions {
  readonly from?: number;
  readonly to?: number;
  readonly layout?: string;
  readonly json?: boolean;
  readonly csv?: string;
}

/** Years that are listed where no last one is given. */
const USUAL_YEARS = 40;

/** `leeglade care`: what is to be cut, felled and planted again in each winter. */
export function addCareCommand(program: Command): void {
  const year = (flags: string, what: string) =>
    new Option(flags, what).argParser(numberBetween(MIN_YEAR, MAX_YEAR, 'calendar years', true));
  program
    .command('care')
    .description('what is to be done to the plants in each winter, with what is to be minded')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(year('--from <Y>', 'first calendar year; the year the plan starts where none is given'))
    .addOption(
      year('--to <Y>', `last calendar year; ${USUAL_YEARS} years after the first where none is given`),
    )
    .addOption(layoutOption())
    .addOption(new Option('--csv <FILE>', 'writes the list as a table as well').argParser(pathFromCaller))
    .option('--json', 'print the list as JSON')
    .action(care);
}

function care(path: string, options: CareOptions): void {
  const { document } = readSite(pathFromCaller(path));
  const layout = layoutOf(document, options.layout);
  const fromYear = options.from ?? document.site.baseYear;
  const toYear = options.to ?? fromYear + USUAL_YEARS;
  if (toYear < fromYear)
    throw new BadInputError(`--to: found ${toYear}, expected the first year, ${fromYear}, or a later one.`);
  const answer: CareAnswer = {
    site: document.site,
    layout,
    fromYear,
    toYear,
    southern: siteCentre(document)[1] < 0,
    jobs: careList(document, layout, { fromYear, toYear }),
  };
  if (options.csv !== undefined) writeFileSync(options.csv, careCsv(answer));
  process.stdout.write(options.json ? careJson(answer) : careText(answer, options.csv ?? null));
}
