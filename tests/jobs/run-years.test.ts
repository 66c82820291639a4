import { describe, expect, test } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import type { JobMap, JobName, JobRunner } from '../../src/jobs/messages.ts';
import { emptyYears, runYears, type YearsRequest } from '../../src/jobs/run-years.ts';
import { computeLightYears } from '../../src/light/light-years.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { lightYears } from '../../src/scene/build-years.ts';
import { siteGrid } from '../../src/scene/site-grid.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { QUICK_FINENESS } from '../../src/wind/fineness.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { line, northWind, optionsOf, tree } from '../years/years-site.ts';

const YEARS = [0, 5, 10, 15, 20];
const features = [
  tree('a', [0, 0]),
  tree('b', [9, 4], { species: 'Juglans regia' }),
  line('belt', 15, { kind: 'belt', species: 'Alnus cordata', status: 'planned', plantedYear: 2027 }, 20),
];
const reading = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
const requestOf = (document: SiteDocument): YearsRequest => {
  const options = optionsOf(document);
  const grid = siteGrid(northWind(features), options.frame, { cellM: 3, layout: null });
  return { document, options, grid, years: YEARS, reading, lightHeightM: 0.1 };
};

/** A runner that counts the years it is asked for. */
function counting(): { runner: JobRunner; asked: { light: number; wind: number } } {
  const local = createLocalRunner();
  const asked = { light: 0, wind: 0 };
  const run = <N extends JobName>(name: N, request: JobMap[N][0], options?: object) => {
    if (name === 'light-years') asked.light += (request as JobMap['light-years'][0]).years.length;
    if (name === 'shelter') asked.wind++;
    return local.run(name, request, options);
  };
  return { runner: { ...local, run }, asked };
}

describe('the years of a field', () => {
  test('are those of the engines, year by year', async () => {
    const request = requestOf(northWind(features));
    const maps = await runYears(counting().runner, request, emptyYears());
    const { document, options, grid } = request;
    const { scene, years } = lightYears(
      document,
      YEARS.map((year) => ({ ...options, year })),
    );
    const light = runToEnd(computeLightYears({ scene, years, grid, readingHeightM: 0.1 }));
    YEARS.forEach((year, k) => {
      const wind = runToEnd(
        computeShelter({
          ...reading,
          scene: shelterScene(document, { ...options, year }).scene,
          grid,
          fineness: QUICK_FINENESS,
        }),
      );
      const found = maps.get(year)!;
      expect(found.lightShare).toEqual(light[k].lightShare);
      expect(found.directHours).toEqual(light[k].directHours);
      expect(found.windShare).toEqual(wind.windShare.slice(0, grid.columns * grid.rows));
    });
  });

  test('are worked out again only where something has changed', async () => {
    const { runner, asked } = counting();
    const cache = emptyYears();
    const ask = async (changed: readonly SiteFeature[]) => {
      asked.light = asked.wind = 0;
      const maps = await runYears(runner, requestOf(northWind(changed)), cache);
      return { maps, ...asked };
    };
    expect(await ask(features)).toMatchObject({ light: 5, wind: 5 });
    expect(await ask(features)).toMatchObject({ light: 0, wind: 0 });
    // A tree that is felled in 2040, year 13: years 15 and 20 are other than they were.
    const felled = features.map((one, i) =>
      i === 1 ? ({ ...one, properties: { ...one.properties, removedYear: 2040 } } as SiteFeature) : one,
    );
    const after = await ask(felled);
    expect(after).toMatchObject({ light: 2, wind: 2 });
    // What was kept and what is new are what all of it is from scratch.
    const scratch = await runYears(runner, requestOf(northWind(felled)), emptyYears());
    for (const year of YEARS) {
      expect(after.maps.get(year)).toEqual(scratch.get(year));
    }
    // A name changes nothing; another grid changes all.
    const named = features.map(
      (one) => ({ ...one, properties: { ...one.properties, name: 'x' } }) as SiteFeature,
    );
    await ask(features);
    expect(await ask(named)).toMatchObject({ light: 0, wind: 0 });
    asked.light = 0;
    const request = requestOf(northWind(features));
    await runYears(runner, { ...request, grid: { ...request.grid, cellM: 4 } }, cache);
    expect(asked.light).toBe(5);
  });
});
