import { describe, expect, it } from 'vitest';
import { shelterScene } from '../../src/scene/build-scene.ts';
import { lightYears } from '../../src/scene/build-years.ts';
import { growPlan } from '../../src/scene/grow-plan.ts';
import { keepScenes } from '../../src/scene/kept-scenes.ts';
import { line, northWind, optionsOf, tree } from '../years/years-site.ts';

const document = northWind([
  tree('walnut', [-30, 20], { status: 'existing', species: 'Juglans regia', heightM: 7 }),
  line('alders', 45, { kind: 'belt', status: 'planned', species: 'Alnus cordata', plantedYear: 2027 }),
]);
const options = optionsOf(document);
const late = { ...options, year: 20 };
const felled = { ...late, felled: { ids: ['alders'], fromYear: 0 } };

describe('states of a site that are kept', () => {
  it('are what the site comes to in each, and the same object when asked again', () => {
    const scenes = keepScenes(document, [options, late]);
    expect(scenes.shelter(felled)).toEqual(shelterScene(document, felled).scene);
    expect(scenes.grown(late)).toEqual(growPlan(document, late));
    expect(scenes.light([options, late])).toEqual(lightYears(document, [options, late]));
    expect(scenes.shelter({ ...felled })).toBe(scenes.shelter(felled));
    expect(scenes.light([{ ...late }]).years[0]).toBe(scenes.light([late]).years[0]);
  });

  it('do not hang on which was asked for before', () => {
    const [one, other] = [keepScenes(document, [options, late]), keepScenes(document, [options, late])];
    one.light([felled]);
    expect(one.light([late, options])).toEqual(other.light([late, options]));
  });
});
