import { afterAll, describe, expect, it } from 'vitest';
import { CHOOSE_ENDS } from '../../src/choose/choose-ends.ts';
import { fieldStates, lasting } from '../../src/choose/field-states.ts';
import { stateFigures } from '../../src/choose/state-figures.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { createNodeRunner } from '../../src/jobs/node-runner.ts';
import { type ChooseRequest, fieldCells, runChoose } from '../../src/jobs/run-choose.ts';
import { runChooseEnds } from '../../src/jobs/run-choose-ends.ts';
import { lightScene, shelterScene } from '../../src/scene/build-scene.ts';
import { atEnd } from '../../src/scene/ends.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import type { SiteDocument, SiteFeature } from '../../src/site/document.ts';
import { choosingDefaults } from '../../src/site/records/choosing.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { QUICK_FINENESS } from '../../src/wind/fineness.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { at, line, northWind, optionsOf, tree } from '../years/years-site.ts';

const field = (id: string, [x, y]: readonly [number, number], deepM = 40): FieldFeature =>
  ({
    type: 'Feature',
    id,
    geometry: {
      type: 'Polygon',
      coordinates: [[at(x, y), at(x + 60, y), at(x + 60, y + deepM), at(x, y + deepM), at(x, y)]],
    },
    properties: { kind: 'field', name: id },
  }) as FieldFeature;
const behind = field('behind', [-60, 0]);
const open = field('open', [150, 0]);
const edge = line('edge', 48, { kind: 'belt', status: 'existing', heightM: 9, owner: 'a neighbour' });
const features: SiteFeature[] = [
  behind,
  open,
  edge,
  line('alders', 45, { kind: 'belt', status: 'planned', species: 'Alnus cordata', plantedYear: 2027 }, 240),
  tree('walnut', [-30, 20], { status: 'existing', species: 'Juglans regia', heightM: 7 }),
  tree('apple', [-20, 10]),
];
const document = northWind(features);
/** Planted three years before the base year, alone. */
const young = line(
  'young',
  -125,
  { kind: 'belt', status: 'existing', species: 'Alnus cordata', plantedYear: 2024 },
  240,
);
const reading = { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS };
const requestOf = (site: SiteDocument, fields: readonly FieldFeature[], cellM = 4): ChooseRequest => ({
  document: site,
  options: optionsOf(document),
  fields,
  cellM,
  reading,
  lightHeightM: 0.1,
  enough: choosingDefaults.enough,
});
const here = createLocalRunner();
const workers = createNodeRunner(2);
afterAll(() => workers.dispose());
const both = requestOf(document, [behind, open]);

describe('what is asked of each field', () => {
  it('is the same here and over workers', async () => {
    expect(await runChoose(workers, both)).toEqual(await runChoose(here, both));
  });

  it('does not hang on which fields are asked with it, nor on their order', async () => {
    const found = await runChoose(here, both);
    const turned = await runChoose(here, { ...both, fields: [open, behind] });
    expect(turned.fields.toReversed()).toEqual(found.fields);
    const alone = await runChoose(here, { ...both, fields: [open] });
    expect(alone.fields[0]).toEqual(found.fields[1]);
  });

  it('is what the engines say of each state, with planned belts and never with planned trees', async () => {
    const { fields } = await runChoose(here, both);
    const states = fieldStates(document, both.options);
    for (const [key, state] of states) {
      const { grid, mask } = fieldCells(behind, both.options, both.cellM);
      const shelter = await here.run('shelter', {
        ...reading,
        scene: shelterScene(document, state).scene,
        grid,
        fineness: QUICK_FINENESS,
      });
      const [light] = await here.run('light-years', {
        scene: lightScene(document, { ...state, year: 0 }).scene,
        years: [lightScene(document, state).scene],
        grid,
        readingHeightM: 0.1,
        coarse: true,
      });
      const asked = stateFigures(light, shelter, mask, both.enough);
      for (const [name, value] of Object.entries(fields[0].states.get(key) ?? {}))
        expect([key, name, Math.abs(value - asked[name as 'bothShare']) / Math.max(1, value)]).toEqual([
          key,
          name,
          // The job looks at all states with the leaf calendars of all of them together.
          expect.closeTo(0, 3),
        ]);
    }
    const [stands, late] = [fields[0].states.get('stands'), fields[0].states.get(20)];
    expect(late?.windCutGrowing).toBeGreaterThan(stands?.windCutGrowing ?? 1);
    expect(fields[1].states.get('stands')?.windCutGrowing).toBeLessThan(0.05);
  });

  it('is without an edge what the site is where it was never drawn', async () => {
    const { fields } = await runChoose(here, both);
    const [without] = fields[0].withoutEdges;
    expect([without.id, without.owner, fields[0].withoutOwners[0].ids]).toEqual([
      'edge',
      'a neighbour',
      ['edge'],
    ]);
    const undrawn = northWind(features.filter((feature) => feature !== edge));
    const drawn = await runChoose(here, requestOf(undrawn, [behind]));
    expect(without.figures).toEqual(drawn.fields[0].states.get('stands'));
    expect(fields[0].withoutOwners[0].figures).toEqual(without.figures);
    expect(drawn.fields[0].withoutEdges).toEqual([]);
  });

  it.each([
    // So deep that the belt has to grow for it.
    ['behind a planned belt', document, field('deep', [150, -120], 160)],
    [
      'behind a belt of some years that was never measured',
      northWind([young]),
      field('young', [-60, -260], 50),
    ],
  ])(
    'is in shelter from the year that a look at every year finds, at each pace: %s',
    async (_, site, deep) => {
      const request = requestOf(site, [deep]);
      const { fields } = await runChoose(here, request);
      const planned = lasting(site, fieldStates(site, request.options).get(0) as SceneOptions);
      const { grid, mask } = fieldCells(deep, request.options);
      for (const pace of ['slow', 'usual', 'fast'] as const) {
        let found: number | null = null;
        for (let year = 0; year <= 40 && found === null; year++) {
          const { scene } = shelterScene(site, { ...planned, year, pace });
          const shelter = await here.run('shelter', { ...reading, scene, grid, fineness: QUICK_FINENESS });
          let [known, sheltered] = [0, 0];
          for (const [cell, inside] of mask.entries()) {
            if (!inside) continue;
            known++;
            if (1 - shelter.windShare[cell] >= request.enough.windCut) sheltered++;
          }
          if (sheltered >= known / 2) found = year;
        }
        expect([pace, fields[0].shelteredFrom[pace]]).toEqual([pace, found]);
      }
      const { slow, usual, fast } = fields[0].shelteredFrom;
      expect(usual).toBeGreaterThan(0);
      expect(fast).toBeLessThanOrEqual(usual ?? 0);
      expect(slow).toBeGreaterThanOrEqual(usual ?? 41);
    },
  );

  it('stops when it is told to', async () => {
    const stop = new AbortController();
    const running = runChoose(workers, both, { signal: stop.signal, onProgress: () => stop.abort() });
    await expect(running).rejects.toMatchObject({ code: 'cancelled' });
  });
});

describe('what the ends of what is not known make of a field', () => {
  it('is what the same site says at that end, on coarse cells', async () => {
    const { fields } = await runChoose(here, both);
    const ends = await runChooseEnds(here, both, fields, [{ measure: 'bothM2', year: 20 }]);
    const atEnds = ends.get('behind');
    expect([...(atEnds?.keys() ?? [])]).toEqual([null, ...CHOOSE_ENDS]);
    const { cellM } = fieldCells(behind, both.options).grid;
    for (const end of ['wide-crowns', 'dense-foliage', 'slow-growth'] as const) {
      const moved = { ...requestOf(document, [behind], cellM), options: atEnd(both.options, end) };
      const direct = await runChoose(here, moved);
      const [one, other] = [atEnds?.get(end), direct.fields[0]];
      expect([...(one?.states.keys() ?? [])]).toEqual(['stands', 20]);
      for (const key of ['stands', 20] as const)
        for (const [name, value] of Object.entries(one?.states.get(key) ?? {}))
          expect([end, key, name, value]).toEqual([
            end,
            key,
            name,
            expect.closeTo(other.states.get(key)?.[name as 'bothShare'] ?? Number.NaN, 4),
          ]);
      expect(one?.withoutOwners.map(({ ids }) => ids)).toEqual([['edge']]);
    }
    const expected = atEnds?.get(null)?.states.get('stands');
    expect(atEnds?.get('dense-foliage')?.states.get('stands')?.lightGrowing).toBeLessThan(
      expected?.lightGrowing ?? 0,
    );
    expect(atEnds?.get('veered-wind')?.states.get('stands')).not.toEqual(expected);
    expect(atEnds?.get('slow-growth')?.shelteredFrom.usual).toBe(fields[0].shelteredFrom.slow);
  });
});
