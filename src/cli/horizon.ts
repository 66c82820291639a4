import { writeFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { declinationAt } from '../geo/declination.ts';
import { toLocal } from '../geo/frame.ts';
import { createLocalRunner } from '../jobs/local-runner.ts';
import { hoursByPeriod, runViewFrom } from '../jobs/run-view-from.ts';
import { lightScene } from '../scene/build-scene.ts';
import { siteCentre, siteFrame } from '../scene/site-ground.ts';
import { findSpot } from '../sheets/find-spot.ts';
import type { HorizonPageInput } from '../sheets/horizon-input.ts';
import { horizonPage } from '../sheets/horizon-page.ts';
import { pageToSvg } from '../sheets/page-to-svg.ts';
import type { PaperSize } from '../sheets/paper.ts';
import type { LengthUnit } from '../sheets/plan-input.ts';
import { middleOfSeason, seasonWords } from '../site/season-words.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { dayWords } from '../sun/day-words.ts';
import { pathFromCaller } from './caller-path.ts';
import { heightOption, layoutOption, numberBetween, spotOption, yearOption } from './common-options.ts';
import { horizonJson, horizonText } from './horizon-text.ts';
import { paperOption } from './page-options.ts';
import { layoutOf, readGroundOf, readWeatherOf } from './prepare.ts';
import { progressLine } from './progress.ts';
import { readSite } from './read-files.ts';
import { readSurfaceOf } from './read-surface.ts';
import { spotOf } from './spot-of.ts';
import { writePdf } from './write-pdf.ts';

interface HorizonOptions {
  readonly at: string;
  readonly year: number;
  readonly height: number;
  /** 1 = January, as a person counts. */
  readonly month?: number;
  readonly layout?: string;
  readonly unit: LengthUnit;
  readonly paper: PaperSize;
  readonly pdf?: string;
  readonly svg?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `leeglade horizon`: what stands around a spot, unrolled, and the hours of sun that each thing takes there. */
export function addHorizonCommand(program: Command): void {
  program
    .command('horizon')
    .description('the view around a spot, unrolled, and the hours of sun that each thing takes there')
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(spotOption())
    .addOption(yearOption())
    .addOption(heightOption('height of the eye above the ground', 0.1))
    .addOption(
      new Option(
        '--month <N>',
        'month whose leaves and sun are drawn, 1 to 12; the middle of the growing season where none is given',
      ).argParser(numberBetween(1, 12, 'the year', true)),
    )
    .addOption(layoutOption())
    .addOption(new Option('--unit <UNIT>', 'unit of lengths').choices(['m', 'ft']).default('m'))
    .addOption(paperOption())
    .addOption(new Option('--pdf <FILE>', 'writes the page to take outside').argParser(pathFromCaller))
    .addOption(new Option('--svg <FILE>', 'the same page as a drawing').argParser(pathFromCaller))
    .option('--json', 'print the answer as JSON')
    .option('--quiet', 'no progress')
    .action(horizon);
}

async function horizon(path: string, options: HorizonOptions): Promise<void> {
  const onDisk = readSite(pathFromCaller(path));
  const { document } = onDisk;
  const { site } = document;
  const lonLat = spotOf(options.at, onDisk);
  const layout = layoutOf(document, options.layout);
  const frame = siteFrame(document);
  const runner = createLocalRunner();
  const { ground } = await readGroundOf(onDisk, frame, runner);
  const { surface } = await readSurfaceOf(onDisk, frame, ground, runner);
  const { scene, things, assumed } = lightScene(document, {
    year: options.year,
    layout,
    pace: 'usual',
    frame,
    ground,
    surface,
    weather: readWeatherOf(onDisk),
  });
  const [, latDeg] = siteCentre(document);
  const [xM, yM] = toLocal(frame, lonLat);
  const month = options.month === undefined ? middleOfSeason(site, latDeg) : options.month - 1;
  const progress = progressLine('horizon', options.quiet === true);
  const found = await runViewFrom(
    runner,
    { scene, things, xM, yM, readingHeightM: options.height, month },
    { onProgress: progress },
  );
  progress(1);
  const now = Date.now();
  const { declinationDeg } = declinationAt(lonLat, new Date(now), found.view.groundM);
  const page: HorizonPageInput = {
    ...found,
    hours: hoursByPeriod(found),
    seasonWords: seasonWords(site, latDeg),
    declinationDeg,
    paper: options.paper,
    unit: options.unit,
    siteName: site.name,
    layoutName: layout,
    date: dayWords(clockOfUtc(now, site.timeZone).date),
    year: options.year,
    calendarYear: scene.calendarYear,
    lonLat,
    findIt: findSpot(document, frame, ground, layout, lonLat, { unit: options.unit, declinationDeg }),
    assumed,
  };
  if (options.pdf !== undefined) writePdf(options.pdf, [horizonPage(page)]);
  if (options.svg !== undefined) writeFileSync(options.svg, pageToSvg(horizonPage(page)));
  const written = [options.pdf, options.svg].filter((file) => file !== undefined);
  process.stdout.write(options.json ? horizonJson(page, found) : horizonText(page, written));
}
