import { type Command, Option } from 'commander';
import { declinationAt } from '../geo/declination.ts';
import { createLocalRunner } from '../jobs/local-runner.ts';
import { findThing } from '../outside/find-thing.ts';
import type { SiteOutdoors } from '../outside/site-outdoors.ts';
import { surroundings } from '../outside/surroundings.ts';
import { siteFrame } from '../scene/site-ground.ts';
import type { PageModel } from '../sheets/page-model.ts';
import { stakesPages } from '../sheets/stakes-page.ts';
import { planStakes } from '../stakes/plan-stakes.ts';
import { shadowReadings } from '../stakes/readings.ts';
import { type StakeScore, scoreReadings } from '../stakes/score-readings.ts';
import { LONGEST_M, type StakePlan } from '../stakes/stake-plan.ts';
import { canBeStaked } from '../stakes/staked-feature.ts';
import { clockOfUtc } from '../sun/clock-time.ts';
import { clocksWords, dayWords, nextDay } from '../sun/day-words.ts';
import { pathFromCaller } from './caller-path.ts';
import { numberBetween } from './common-options.ts';
import { lettersOf } from './line-letters.ts';
import { type TapePageOptions, withTapePage } from './page-options.ts';
import { layoutOf, readGroundOf } from './prepare.ts';
import { readSite } from './read-files.ts';
import { stakesJson, stakesText } from './stakes-text.ts';
import { writePdf } from './write-pdf.ts';

interface StakesOptions extends TapePageOptions {
  readonly of: string;
  readonly date?: string;
  readonly times?: string;
  readonly along?: number;
  readonly longest: number;
  readonly json?: boolean;
}

/** `leeglade stakes`: where the tip of a shadow will fall on a day, taped from points that can be found. */
export function addStakesCommand(program: Command): void {
  const command = program
    .command('stakes')
    .description('where the tip of a thing’s shadow will fall on a day, as offsets to tape')
    .argument('<site file>', 'site file (.site.geojson)')
    .requiredOption('--of <THING>', 'id, name or number of a tree, belt, block, wall or building')
    .option('--date <YYYY-MM-DD>', 'the day; tomorrow there where none is given')
    .option('--times <HH:MM,…>', 'clock times there; every full hour where none are given')
    .addOption(
      new Option('--along <M>', 'where on a belt, wall or outline, metres from its first point').argParser(
        numberBetween(0, 100_000, 'metres'),
      ),
    )
    .addOption(
      new Option('--longest <M>', 'longest shadow that is staked, in metres')
        .default(LONGEST_M)
        .argParser(numberBetween(1, 400, 'metres')),
    );
  withTapePage(command).option('--json', 'print the stakes as JSON').action(stakes);
}

async function stakes(path: string, options: StakesOptions): Promise<void> {
  const onDisk = readSite(pathFromCaller(path));
  const { document } = onDisk;
  const layout = layoutOf(document, options.layout);
  const frame = siteFrame(document);
  const { ground, description } = await readGroundOf(onDisk, frame, createLocalRunner());
  const site: SiteOutdoors = { document, layout, frame, ground };
  const { id } = findThing(document, layout, options.of, canBeStaked, 'tree, belt, block, wall or building');
  const today = clockOfUtc(Date.now(), document.site.timeZone).date;
  const plan = planStakes(site, id, {
    date: options.date ?? nextDay(today),
    times: options.times === undefined ? null : options.times.split(',').map((time) => time.trim()),
    longestM: options.longest,
    line: options.line === undefined ? null : lettersOf(options.line),
    ...(options.along === undefined ? {} : { alongM: options.along }),
  });
  const readings = shadowReadings(document, id);
  const score: StakeScore | null = readings.length > 0 ? scoreReadings(site, id, readings) : null;
  if (options.pdf !== undefined)
    writePdf(options.pdf, pagesOf(site, plan, options, description, today, onDisk.document.site.name));
  process.stdout.write(
    options.json
      ? stakesJson(plan, score)
      : stakesText(plan, score, { unit: options.unit, ground: description, pdf: options.pdf ?? null }),
  );
}

function pagesOf(
  site: SiteOutdoors,
  plan: StakePlan,
  options: StakesOptions,
  ground: string,
  today: string,
  siteName: string,
): PageModel[] {
  return stakesPages({
    paper: options.paper,
    unit: options.unit,
    siteName,
    layoutName: site.layout,
    madeOn: dayWords(today),
    date: plan.date,
    day: dayWords(plan.date, true),
    clocks: clocksWords(plan.stakes[0].utcMs, plan.timeZone),
    frame: site.frame,
    declinationDeg: declinationAt(plan.thing.middle, new Date(`${plan.date}T12:00:00Z`)).declinationDeg,
    plan,
    around: surroundings(site, plan.date),
    ground,
  });
}
