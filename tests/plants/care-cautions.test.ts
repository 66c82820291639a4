import { describe, expect, it } from 'vitest';
import { type CautionedWork, careCautions } from '../../src/plants/care-cautions.ts';
import { CATALOGUE } from '../../src/plants/catalogue.ts';
import { findSpecies } from '../../src/plants/find-species.ts';

const work = (species: string, more: Partial<CautionedWork>): string[] =>
  careCautions({
    what: 'coppice',
    species: findSpecies(species, undefined),
    heightBeforeM: 9,
    isGrafted: false,
    ...more,
  });

describe('cautions of care', () => {
  it('say that a conifer does not shoot again; yew and broadleaves do', () => {
    for (const what of ['coppice', 'pollard'] as const) {
      expect(work('Picea abies', { what })[0]).toContain(
        'Norway spruce, like most conifers, does not shoot again',
      );
      expect(work('Taxus baccata', { what }).join()).not.toContain('conifers');
      expect(work('Alnus glutinosa', { what }).join()).not.toContain('conifers');
    }
    expect(work('Picea abies', { what: 'cutTo', heightM: 5 })[0]).toContain(
      'no farther back than green shoots',
    );
    const conifers = CATALOGUE.filter(({ shootsAgain }) => !shootsAgain).map(
      ({ botanicalName }) => botanicalName,
    );
    expect(
      conifers
        .map((name) => name.split(' ')[0])
        .every((genus) => ['Abies', 'Cupressus', 'Larix', 'Picea', 'Pinus', 'Thuja'].includes(genus)),
    ).toBe(true);
    expect(conifers).toHaveLength(11);
  });

  it('say when more than a third is cleared or thinned at once', () => {
    const raised = (heightM: number) => work('Alnus glutinosa', { what: 'raiseCrown', heightM });
    expect(raised(3)).toEqual([]);
    expect(raised(3.2)[0]).toContain('more than a third of its height');
    const thinned = (share: number) => work('Alnus glutinosa', { what: 'thin', share });
    expect(thinned(0.33)).toEqual([]);
    expect(thinned(0.4)[0]).toContain('More than a third of the leaves');
  });

  it('say what shoots from the stump of a grafted tree, and what a dead one does', () => {
    expect(work('Malus domestica', { isGrafted: true })[0]).toContain('rootstock');
    expect(work('Malus domestica', { what: 'die' })[0]).toContain('brittle');
  });
});
