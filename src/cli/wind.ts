import { type Command, Option } from 'commander';
import { siteCentre } from '../scene/site-ground.ts';
import { siteWind } from '../scene/site-wind.ts';
import type { PaperSize } from '../sheets/paper.ts';
import { windPages } from '../sheets/wind-page.ts';
import type { WindPageInput } from '../sheets/wind-page-input.ts';
import { seasonWords } from '../site/season-words.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { dayWords } from '../sun/day-words.ts';
import { BEAUFORT_SCALE } from '../wind/beaufort.ts';
import { restsWords } from '../wind/rests-words.ts';
import { pathFromCaller } from './caller-path.ts';
import { paperOption } from './page-options.ts';
import { readWeatherOf } from './prepare.ts';
import { readSite } from './read-files.ts';
import { windJson, windText } from './wind-text.ts';
import { writePdf } from './write-pdf.ts';

interface WindOptions {
  readonly unit: WindPageInput['unit'];
  readonly paper: PaperSize;
  readonly pdf?: string;
  readonly json?: boolean;
}

/** `leeglade wind`: the open wind of a site by season and direction, and how often each of Beaufort's signs is seen. */
export function addWindCommand(program: Command): void {
  program
    .command('wind')
    .description('the open wind by season and direction, and how often trees sway in it')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(new Option('--unit <UNIT>', 'unit of speeds').choices(['m/s', 'mph']).default('m/s'))
    .addOption(paperOption())
    .addOption(new Option('--pdf <FILE>', 'writes the page of the wind as well').argParser(pathFromCaller))
    .option('--json', 'print the figures as JSON')
    .action(wind);
}

function wind(path: string, { unit, paper, pdf, json }: WindOptions): void {
  const onDisk = readSite(pathFromCaller(path));
  const { site } = onDisk.document;
  const found = siteWind(onDisk.document, readWeatherOf(onDisk));
  const page: WindPageInput = {
    paper,
    unit,
    siteName: site.name,
    madeOn: dayWords(clockOfUtc(Date.now(), site.timeZone).date),
    growingWords: seasonWords(site, siteCentre(onDisk.document)[1]),
    growing: found.facts.growing,
    rest: found.facts.rest,
    signs: BEAUFORT_SCALE,
    rests: restsWords(found.rests, site.weatherFile),
    assumed: found.assumed,
  };
  if (pdf !== undefined) writePdf(pdf, windPages(page));
  process.stdout.write(json ? windJson(page, found.rests) : windText(page, pdf ?? null));
}
