import { describe, expect, it } from 'vitest';
import { edgesByOwner } from '../../src/choose/edges-by-owner.ts';
import { fieldStates, lasting, standsWithout } from '../../src/choose/field-states.ts';
import { nearEdges } from '../../src/choose/near-edges.ts';
import { growPlan } from '../../src/scene/grow-plan.ts';
import type { SceneOptions } from '../../src/scene/options.ts';
import { standingAt } from '../../src/scene/things.ts';
import type { SiteFeature } from '../../src/site/document.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { at, line, northWind, optionsOf, tree } from '../years/years-site.ts';

const field = (id: string, [x, y]: readonly [number, number], halfM: number): FieldFeature =>
  ({
    type: 'Feature',
    id,
    geometry: {
      type: 'Polygon',
      coordinates: [
        [
          at(x - halfM, y - halfM),
          at(x + halfM, y - halfM),
          at(x + halfM, y + halfM),
          at(x - halfM, y + halfM),
          at(x - halfM, y - halfM),
        ],
      ],
    },
    properties: { kind: 'field', name: id },
  }) as FieldFeature;
const close = field('close', [0, 0], 30);
const old = { kind: 'belt', status: 'existing', heightM: 10, owner: 'the neighbour' };
const features: SiteFeature[] = [
  close,
  line('spruces', 40, { ...old, species: 'Picea abies' }, 400),
  line('more', -40, { ...old, species: 'Picea abies' }),
  line('mill', 300, { ...old, owner: 'the mill' }),
  line('own', 45, { kind: 'belt', status: 'existing', heightM: 5 }),
  line('new', 0, { kind: 'belt', status: 'planned', species: 'Alnus cordata', plantedYear: 2027 }),
  line('fence', 20, { kind: 'wall', heightM: 1 }),
  line('net', 10, { kind: 'wall', heightM: 2, fromYear: 2027, toYear: 2035 }),
  tree('apple', [5, 5]),
  tree('walnut', [-5, -5], { status: 'existing', heightM: 8, species: 'Juglans regia' }),
];
const document = northWind(features);
const options = optionsOf(document);
const states = fieldStates(document, options);
const stands = states.get('stands') as SceneOptions;
const standing = (state: SceneOptions | undefined) =>
  standingAt(document, state as SceneOptions)
    .things.map(({ id }) => id)
    .sort();

describe('the states in which fields are compared', () => {
  it('leave out what is planned as the field stands, nets that come later with it', () => {
    expect(standing(stands)).toEqual(['fence', 'mill', 'more', 'own', 'spruces', 'walnut']);
  });

  it('have planned belts and nets, and never planned trees', () => {
    const withAll = ['fence', 'mill', 'more', 'net', 'new', 'own', 'spruces', 'walnut'];
    expect(standing(states.get(0))).toEqual(withAll);
    // The net is gone after 2035.
    for (const year of [10, 20] as const)
      expect(standing(states.get(year))).toEqual(withAll.filter((id) => id !== 'net'));
    expect(standing(lasting(document, states.get(0) as SceneOptions))).not.toContain('net');
  });

  it('keep gone what is gone already', () => {
    const felled = { ids: ['walnut'], fromYear: 0 };
    const without = fieldStates(document, { ...options, felled });
    for (const state of without.values()) expect(standing(state)).not.toContain('walnut');
    expect(standing(standsWithout(without.get('stands') as SceneOptions, ['own']))).toEqual(
      standing(stands).filter((id) => id !== 'walnut' && id !== 'own'),
    );
  });
});

describe('edges that are somebody else’s', () => {
  it('are belts and woods with an owner within twenty-five of their heights, found beside the middle of their side too', () => {
    const near = nearEdges(document, close, options.frame, growPlan(document, stands), stands.layout);
    expect(near.map(({ id }) => id)).toEqual(['spruces', 'more']);
    const beside = field('beside', [150, 100], 5);
    expect(
      nearEdges(document, beside, options.frame, growPlan(document, stands), stands.layout).map(
        ({ id }) => id,
      ),
    ).toEqual(['spruces', 'more', 'mill']);
  });

  it('are told together by owner, by species where all are of one', () => {
    const near = nearEdges(
      document,
      field('wide', [0, 0], 100),
      options.frame,
      growPlan(document, stands),
      stands.layout,
    );
    expect(edgesByOwner(document, near)).toEqual([
      { owner: 'the neighbour', noun: 'Norway spruce belts', ids: ['spruces', 'more'] },
      { owner: 'the mill', noun: 'belt', ids: ['mill'] },
    ]);
  });
});
