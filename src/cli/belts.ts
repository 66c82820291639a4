import { type Command, Option } from 'commander';
import { beltFacts, fieldJudgedBy } from '../belts/belt-facts.ts';
import { beltFindings } from '../belts/belt-findings.ts';
import { type BeltLike, isBeltLike, isPlanned } from '../belts/belt-shape.ts';
import type { Insurance, InsuranceWish } from '../belts/insurance-belt.ts';
import { runBeltsWhen } from '../jobs/run-belt-when.ts';
import { runBridges } from '../jobs/run-bridges.ts';
import { runDarkened } from '../jobs/run-darkened.ts';
import { runInsurance } from '../jobs/run-insurance.ts';
import { findSpecies, suggestSpeciesName } from '../plants/find-species.ts';
import { lightScene } from '../scene/build-scene.ts';
import { ownersOf } from '../scene/owners.ts';
import { patchMasks } from '../scene/patch-masks.ts';
import { chosenFeatures } from '../site/chosen-features.ts';
import { BadInputError } from '../units/bad-input.ts';
import { type BeltAnswer, beltsJson, beltsText } from './belts-text.ts';
import {
  type CommonOptions,
  layoutOption,
  numberBetween,
  threadsOption,
  yearOption,
} from './common-options.ts';
import { prepare } from './prepare.ts';
import { progressLine } from './progress.ts';
import { GALE_MPS, type GuessOptions, shelterOptionsOf, withGuessOptions } from './shelter-options.ts';

interface BeltsOptions
  extends GuessOptions,
    Pick<CommonOptions, 'field' | 'layout' | 'json' | 'threads' | 'quiet'> {
  readonly year: number;
  readonly felledIn: number;
  readonly keep?: number;
  readonly insure: string;
}

const METRES = {
  metres: (lengthM: number) => `${lengthM >= 100 ? Math.round(lengthM) : lengthM.toFixed(1)} m`,
};
const WIND_HEIGHT_M = 1.5;
const LIGHT_HEIGHT_M = 0.1;
const MOST_CELLS = 120;

/** `leeglade belts`: what is wrong with each belt, when the planned ones protect, and what insures the borrowed ones. */
export function addBeltsCommand(program: Command): void {
  const command = program
    .command('belts')
    .description(
      'what is wrong with each belt, when planned ones protect, and the latest year to insure borrowed ones',
    )
    .argument('<site file>', 'site file (.site.geojson)')
    .addOption(yearOption('years after planting of which the sun that belts take is told'))
    .addOption(
      new Option('--felled-in <N>', 'year after planting in which a borrowed edge is supposed to be felled')
        .default(15)
        .argParser(numberBetween(0, 100, 'years', true)),
    )
    .addOption(
      new Option(
        '--keep <SHARE>',
        'mean cut of the wind that the field must keep; three quarters of what it has otherwise',
      ).argParser(numberBetween(0, 1, 'the open wind')),
    )
    .addOption(
      new Option('--insure <SPECIES>', 'species of the insuring belt, planted along the edge').default(
        'Alnus cordata',
      ),
    )
    .option('--field <NAME>', 'the field that is sheltered; the one that is taken otherwise')
    .addOption(layoutOption())
    .option('--json', 'print the answer as JSON')
    .addOption(threadsOption())
    .option('--quiet', 'no progress');
  withGuessOptions(command).action(belts);
}

async function belts(path: string, options: BeltsOptions): Promise<void> {
  const { site, frame, fields, scene, runner } = await prepare(path, {
    ...options,
    cell: 1,
    height: WIND_HEIGHT_M,
    out: '.',
  });
  try {
    const { document } = site;
    const field = options.field === undefined ? fieldJudgedBy(document) : fields[0];
    if (!field)
      throw new BadInputError(`${site.fileName}: no field is drawn; expected one that belts shelter.`);
    const { species: siteSpecies } = document.site;
    if (!findSpecies(options.insure, siteSpecies)) {
      const meant = suggestSpeciesName(options.insure, siteSpecies);
      throw new BadInputError(
        `--insure is ${JSON.stringify(options.insure)}; expected a botanical name of the catalogue or of the site's own species${meant ? `; did you mean ${JSON.stringify(meant)}?` : '.'}`,
      );
    }
    const quiet = options.quiet === true;
    const all = chosenFeatures(document, scene.layout).filter(isBeltLike);
    const light = lightScene(document, scene);
    const patches = patchMasks(document, {
      frame,
      layout: scene.layout,
      fields: [field],
      readingHeightM: LIGHT_HEIGHT_M,
      cellM: 0.5,
      mostCells: MOST_CELLS,
    });
    const darkened = await runDarkened(runner, light.scene, light.things, patches, {
      onProgress: progressLine('sun that belts take', quiet),
    });
    const request = { document, options: scene, field, readingHeightM: WIND_HEIGHT_M };
    const reading = { readingHeightM: WIND_HEIGHT_M, galeMps: GALE_MPS, options: shelterOptionsOf(options) };
    const planned = all.filter((belt) => isPlanned(belt) && belt.properties.kind === 'belt');
    const whens = await runBeltsWhen(runner, request, planned, {
      onProgress: progressLine('years to protect', quiet),
    });
    const owners = ownersOf(document);
    const insured = (belt: BeltLike) => !isPlanned(belt) && owners.has(belt.id);
    const answers: BeltAnswer[] = [];
    for (const facts of beltFacts(document, scene, field)) {
      const belt = all.find(({ id }) => id === facts.id)!;
      const when = whens.get(belt.id) ?? null;
      const offers = when
        ? await runBridges(runner, request, belt, when, reading, {
            onProgress: progressLine(`bridges for ${facts.label}`, quiet),
          })
        : [];
      const insurance: Insurance | null = insured(belt)
        ? await runInsurance(runner, request, wishOf(belt, options), reading, {
            onProgress: progressLine(`insurance for ${facts.label}`, quiet),
          })
        : null;
      answers.push({
        facts,
        findings: beltFindings(facts, darkened.get(belt.id) ?? [], METRES),
        darkened: darkened.get(belt.id) ?? [],
        when,
        offers,
        insurance,
      });
    }
    const page = {
      siteName: document.site.name,
      baseYear: document.site.baseYear,
      year: options.year,
      layout: scene.layout,
      fieldName: field.properties.name ?? String(field.id),
      belts: answers,
    };
    process.stdout.write(options.json ? beltsJson(page) : beltsText(page));
  } finally {
    runner.dispose();
  }
}

const wishOf = (belt: BeltLike, { felledIn, keep, insure }: BeltsOptions): InsuranceWish => ({
  edgeId: belt.id,
  felledInYear: felledIn,
  leastCutShare: keep ?? null,
  insurer: { species: insure },
});
