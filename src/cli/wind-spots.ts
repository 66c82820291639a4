import { writeFileSync } from 'node:fs';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { declinationAt } from '../geo/declination.ts';
import { placeFromText } from '../geo/place-from-text.ts';
import { createLocalRunner } from '../jobs/local-runner.ts';
import { runSpotPlan, runSpotScore } from '../jobs/run-wind-spots.ts';
import { findThing } from '../outside/find-thing.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { surroundings } from '../outside/surroundings.ts';
import { siteFrame } from '../scene/site-ground.ts';
import { windSpotsPages } from '../sheets/wind-spots-page.ts';
import { serialiseSite } from '../site/serialise-site.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { dayWords, nextDay } from '../sun/day-words.ts';
import { keptSpots } from '../windspots/kept-spots.ts';
import { canShelter, SHELTERING_WORDS } from '../windspots/sheltering-feature.ts';
import { type SpotWish, USUAL_HEIGHTS } from '../windspots/spot-plan.ts';
import { writeDown } from '../windspots/write-down.ts';
import { pathFromCaller } from './caller-path.ts';
import { numberBetween, severalTimes } from './common-options.ts';
import { lettersOf } from './line-letters.ts';
import { type TapePageOptions, withTapePage } from './page-options.ts';
import { layoutOf, readGroundOf } from './prepare.ts';
import { readSite } from './read-files.ts';
import { windSpotsJson, windSpotsText } from './wind-spots-text.ts';
import { writePdf } from './write-pdf.ts';

interface WindSpotsOptions extends TapePageOptions {
  readonly of: string;
  readonly from: number;
  readonly speed: number;
  readonly date?: string;
  readonly heights: readonly number[];
  readonly at: readonly string[];
  readonly along?: number;
  readonly write?: string;
  readonly json?: boolean;
}

/** `leeglade wind-spots`: what two hand meters should show behind a belt, in writing before anyone measures. */
export function addWindSpotsCommand(program: Command): void {
  const command = program
    .command('wind-spots')
    .description('what two hand meters, one in the open, should show at spots behind a belt in one wind')
    .argument('<site file>', 'site file (.site.geojson)')
    .requiredOption('--of <BELT>', 'id or name of a belt, wall, fence or net')
    .addOption(
      new Option('--from <DEG>', 'where the wind comes from, degrees clockwise from true north')
        .argParser(numberBetween(0, 360, 'degrees'))
        .makeOptionMandatory(),
    )
    .addOption(
      new Option('--speed <MPS>', 'mean wind in the open at 10 m, in metres a second')
        .argParser(numberBetween(0, 100, 'metres a second'))
        .makeOptionMandatory(),
    )
    .option('--date <YYYY-MM-DD>', 'the day; tomorrow there where none is given')
    .addOption(
      new Option('--heights <LIST>', 'distances behind it, in its heights, square to it')
        .default(USUAL_HEIGHTS, USUAL_HEIGHTS.join(','))
        .argParser(heightsOf),
    )
    .option(
      '--at <LAT,LON>',
      'another spot, such as 45.1,-64.5; may be given several times',
      severalTimes,
      [] as readonly string[],
    )
    .addOption(
      new Option(
        '--along <M>',
        'where along the belt, metres from its first point; its middle otherwise',
      ).argParser(numberBetween(0, 100_000, 'metres')),
    );
  withTapePage(command)
    .addOption(
      new Option('--write <FILE>', 'writes the site with all of this written down in it').argParser(
        pathFromCaller,
      ),
    )
    .option('--json', 'print the spots as JSON')
    .action(windSpots);
}

/** Distances such as "2, 5,10": rising, none twice. An empty list: none. */
function heightsOf(text: string): readonly number[] {
  const heights = text
    .split(/[,\s]+/)
    .filter((part) => part !== '')
    .map(Number);
  if (heights.some((each) => !Number.isFinite(each)))
    throw new InvalidArgumentError(`"${text}" is no list of distances; expected numbers such as 2,5,10.`);
  return heights;
}

async function windSpots(path: string, options: WindSpotsOptions): Promise<void> {
  const onDisk = readSite(pathFromCaller(path));
  const { document } = onDisk;
  const layout = layoutOf(document, options.layout);
  const frame = siteFrame(document);
  const runner = createLocalRunner();
  const { ground, description } = await readGroundOf(onDisk, frame, runner);
  const site: SiteOutdoors = { document, layout, frame, ground };
  const { id } = findThing(document, layout, options.of, canShelter, SHELTERING_WORDS);
  const today = clockOfUtc(Date.now(), document.site.timeZone).date;
  const wish: SpotWish = {
    date: options.date ?? nextDay(today),
    wind: { fromDeg: options.from, speedMps: options.speed },
    heights: options.heights,
    alongM: options.along ?? null,
    places: options.at.map(placeFromText),
    line: options.line === undefined ? null : lettersOf(options.line),
  };
  const plan = await runSpotPlan(runner, { site, of: id, wish });
  const kept = keptSpots(document, id);
  const score =
    kept.length > 0 ? await runSpotScore(runner, { site, of: id, label: plan.belt.label, kept }) : null;
  if (options.pdf !== undefined)
    writePdf(
      options.pdf,
      windSpotsPages({
        paper: options.paper,
        unit: options.unit,
        siteName: document.site.name,
        layoutName: layout,
        madeOn: dayWords(today),
        date: plan.date,
        day: dayWords(plan.date, true),
        frame,
        declinationDeg: declinationAt(plan.belt.middle, new Date(`${plan.date}T12:00:00Z`)).declinationDeg,
        plan,
        around: surroundings(site, plan.date),
        ground: description,
      }),
    );
  if (options.write !== undefined) writeFileSync(options.write, serialiseSite(writeDown(document, plan)));
  const written = [options.pdf, options.write].filter((file) => file !== undefined);
  process.stdout.write(
    options.json
      ? windSpotsJson(plan, score)
      : windSpotsText(plan, score, { unit: options.unit, ground: description, written }),
  );
}
