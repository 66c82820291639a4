import { afterAll, describe, expect, it } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { changeLight, holdInLight, keepLight, runLight } from '../../src/jobs/run-light.ts';
import { runShelter } from '../../src/jobs/run-shelter.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import { siteGrid } from '../../src/scene/site-grid.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';

const at = (eastM: number, northM: number) => [-64.5 + eastM / 78_700, 45.1 + northM / 111_100];

/** A field of 40 × 36 m with a belt, a wall and two trees. */
const document: SiteDocument = {
  type: 'FeatureCollection',
  site: { formatVersion: 1, name: 'Test', timeZone: 'America/Halifax', baseYear: 2027 },
  features: [
    ['field', 'Polygon', [[at(0, 0), at(40, 0), at(40, 36), at(0, 36), at(0, 0)]], {}],
    ['belt', 'LineString', [at(-5, 0), at(-5, 40)], { heightM: 8, opticalPorosityLeafOff: 0.7 }],
    ['wall', 'LineString', [at(10, -2), at(30, -2)], { heightM: 2 }],
    ['tree', 'Point', at(15, 15), { species: 'Juglans regia', heightM: 9 }],
    ['tree', 'Point', at(28, 22), { heightM: 7, crownForm: 'cone' }],
  ].map(
    ([kind, type, coordinates, properties], i) =>
      ({
        type: 'Feature',
        id: `${kind}-${i}`,
        geometry: { type, coordinates },
        properties: { kind, ...(properties as object) },
      }) as SiteFeature,
  ),
};
const frame = siteFrame(document);
const { ground } = siteGround(document, frame, null);
const options = { year: 5, layout: null, pace: 'usual' as const, frame, ground, weather: null };
const light = (cellM: number) => ({
  scene: lightScene(document, options).scene,
  grid: siteGrid(document, frame, { cellM }),
  readingHeightM: 0.1,
});
const shelter = {
  scene: shelterScene(document, options).scene,
  grid: siteGrid(document, frame, { cellM: 1 }),
  readingHeightM: 1.5,
  galeMps: 10.8,
  options: USUAL_SHELTER_OPTIONS,
};

// Two worker threads serve all tests: starting one costs more than these small jobs.
const workers = createNodeRunner(2);
afterAll(() => workers.dispose());

describe('the runners', () => {
  it('give the same light here and over workers that share the rows', async () => {
    const request = light(2);
    const here = await runLight(createLocalRunner(), request);
    const there = await runLight(workers, request);
    expect(there.directHours).toEqual(here.directHours);
    expect(there.lightShare).toEqual(here.lightShare);
    expect(there.dailyLightIntegral).toEqual(here.dailyLightIntegral);
    expect(there.grid).toEqual(here.grid);
  });

  it('keep a field of light that follows a change, each thread its rows, until another is kept', async () => {
    const request = light(2);
    const { crowns, prisms } = request.scene;
    const values = crowns.values.slice();
    values[0] += 4;
    const change = { crowns: { ...crowns, values }, prisms, live: false };
    const { kept, result } = await keepLight(workers, request);
    expect(result.lightShare).toEqual((await runLight(workers, request)).lightShare);
    await holdInLight(workers, kept, crowns.thing[0]);
    const changed = await changeLight(workers, kept, change);
    const scratch = await runLight(workers, {
      ...request,
      scene: { ...request.scene, crowns: change.crowns },
    });
    const worst = scratch.lightShare.reduce((most, share, i) => {
      const here = changed?.lightShare[i] ?? Number.POSITIVE_INFINITY;
      return Number.isNaN(share) && Number.isNaN(here) ? most : Math.max(most, Math.abs(here - share));
    }, 0);
    expect(worst).toBeLessThan(1e-4);
    await keepLight(workers, request);
    expect(await changeLight(workers, kept, change)).toBeNull();
  });

  it('give each of several small grids the light it has alone', async () => {
    const { scene, grid, readingHeightM } = light(2);
    const corner = { ...grid, rows: 4, columns: 5 };
    const places = [
      { grid: corner, readingHeightM },
      { grid: corner, readingHeightM: 1 },
    ];
    const both = await workers.run('light-on-grids', { scene, places });
    const alone = await createLocalRunner().run('light', { scene, ...places[1] });
    expect(both[1].lightShare).toEqual(alone.lightShare);
  });

  it('give the same shelter here and over workers that share the rows', async () => {
    const here = await runShelter(createLocalRunner(), shelter);
    const there = await runShelter(workers, shelter);
    expect(there.windShare).toEqual(here.windShare);
    expect(there.galeHours).toEqual(here.galeHours);
  });

  // How long a cancel takes is measured by the benchmark; here: it is seen at the kernel's next pause.
  it('stop a kernel at its next pause when cancelled, and then take the next job', async () => {
    const stop = new AbortController();
    let reports = 0;
    const running = runLight(workers, light(0.1), {
      signal: stop.signal,
      onProgress: () => {
        reports++;
        stop.abort();
      },
    });
    await expect(running).rejects.toMatchObject({ code: 'cancelled' });
    expect(reports).toBeLessThanOrEqual(3);
    const next = await runShelter(workers, shelter);
    expect(next.windShare.length).toBeGreaterThan(0);
  });
});
