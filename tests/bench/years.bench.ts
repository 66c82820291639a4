/**
 * A field of a hectare at 1 m through 41 years: growth and shelter stepped together, then direct hours, share of light
 * and shelter of every year, on two threads; against the same from the usual engines a year at a time. Seeded.
 */

import { toLocal } from '../../src/geo/frame.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { runLight } from '../../src/jobs/run-light.ts';
import { runShelter } from '../../src/jobs/run-shelter.ts';
import { runStepYears } from '../../src/jobs/run-step-years.ts';
import { emptyYears, runYears } from '../../src/jobs/run-years.ts';
import { seededRandom } from '../../src/numeric/random.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { YEARS } from '../../src/years/growing-plants.ts';
import { at, line, northWind, optionsOf, tree } from '../years/years-site.ts';

const THREADS = 2;
const SIDE_M = 100;
const TREES = 60;
/** Years that the usual engines are asked for; what they take is carried to all. */
const REFERENCE_YEARS = [5, 20, 40];
const RUNS = 3;
const reading = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
const LIGHT_HEIGHT_M = 0.1;
type Row = Record<string, string | number>;

export const title =
  'The years: a hectare at 1 m, 60 trees, 5 belts, 41 years, direct hours, share of light, shelter';

function garden(): { document: SiteDocument; options: SceneOptions } {
  const random = seededRandom(41);
  const species = ['Juglans regia', 'Malus domestica', 'Pyrus communis', 'Alnus cordata', 'Corylus avellana'];
  const sectors = Array.from({ length: 16 }, (_, k) => ({
    fromDeg: 22.5 * k,
    frequency: (1 + Math.cos((Math.PI * (22.5 * k - 250)) / 180)) / 16,
    meanSpeedMps: 4.5,
  }));
  const side = (id: string, northM: number, properties: object) =>
    line(id, northM, { kind: 'belt', status: 'planned', plantedYear: 2027, ...properties }, SIDE_M / 2);
  const features: SiteFeature[] = [
    ...Array.from({ length: TREES }, (_, i) =>
      tree(`t${i}`, [(random() - 0.5) * SIDE_M, (random() - 0.5) * SIDE_M], {
        species: species[i % species.length],
        plantedYear: 2027 + Math.floor(8 * random()),
      }),
    ),
    side('north', 50, { species: 'Picea abies' }),
    side('south', -50, { species: 'Crataegus monogyna' }),
    side('middle', 0, { species: 'Alnus glutinosa' }),
    side('far', 80, { species: 'Populus nigra' }),
    side('old', 110, { species: 'Picea abies', status: 'existing', heightM: 14 }),
  ];
  const document = northWind(features, { wind: { heightM: 10, sectors } });
  return { document, options: optionsOf(document) };
}

export async function bench(): Promise<Row[]> {
  const { document, options } = garden();
  const [x, y] = toLocal(options.frame, at(0, 0));
  const grid = {
    columns: SIDE_M,
    rows: SIDE_M,
    cellM: 1,
    westM: Math.round(x) - SIDE_M / 2,
    northM: Math.round(y) + SIDE_M / 2,
  };
  const runner = createNodeRunner(THREADS);
  const request = { document, options, grid, years: YEARS, reading, lightHeightM: LIGHT_HEIGHT_M };
  try {
    const stepping = await best(() =>
      runStepYears(runner, { document, options, shelter: USUAL_SHELTER_OPTIONS, fullEffect: 1.2 }),
    );
    const years = await best(() => runYears(runner, request, emptyYears()));
    const cache = emptyYears();
    await runYears(runner, request, cache);
    const again = await best(() => runYears(runner, request, cache));
    const aYear = await best(async () => {
      for (const year of REFERENCE_YEARS) {
        const { scene } = lightScene(document, { ...options, year });
        await runLight(runner, { scene, grid, readingHeightM: LIGHT_HEIGHT_M });
        const shelter = shelterScene(document, { ...options, year });
        await runShelter(runner, { ...reading, scene: shelter.scene, grid });
      }
    });
    const usualMs = (aYear / REFERENCE_YEARS.length) * YEARS.length;
    const row = (what: string, ms: number): Row => ({
      what,
      s: Number((ms / 1000).toPrecision(3)),
      'times as fast as the usual engines': Number((usualMs / ms).toPrecision(2)),
    });
    return [
      row('light and shelter of 41 years', years),
      row('the same with growth and shelter stepped together', years + stepping),
      row('asked again, nothing changed', again),
      row(`usual engines, ${YEARS.length} years at the pace of ${REFERENCE_YEARS.length}`, usualMs),
    ];
  } finally {
    runner.dispose();
  }
}

async function best(work: () => Promise<unknown>): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < RUNS; run++) {
    const from = performance.now();
    await work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}
