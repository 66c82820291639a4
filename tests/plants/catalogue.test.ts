import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/plants/catalogue.ts';
import { beltHabitOf, crownDensity } from '../../src/plants/crown-density.ts';
import { plainName } from '../../src/plants/plain-name.ts';

describe('the catalogue', () => {
  it('has at least 45 trees and shrubs, each name once', () => {
    expect(CATALOGUE.length).toBeGreaterThanOrEqual(45);
    const names = CATALOGUE.flatMap(({ botanicalName, synonyms }) => [botanicalName, ...synonyms]).map(
      plainName,
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it('has every role, and every number with a source', () => {
    expect(new Set(CATALOGUE.map((species) => species.role))).toEqual(new Set('NFASTU'));
    for (const species of CATALOGUE) {
      for (const source of [species.heightSource, species.curveSource, species.transmittance.source]) {
        expect(source.length, species.botanicalName).toBeGreaterThan(3);
      }
    }
  });

  it('lets through more light leafless than in leaf, and evergreens nearly the same', () => {
    for (const { botanicalName, leafClass, transmittance } of CATALOGUE) {
      expect(transmittance.leafOff, botanicalName).toBeGreaterThanOrEqual(transmittance.leafOn);
      if (leafClass !== 'evergreen') expect(transmittance.leafOff, botanicalName).toBeGreaterThan(0.4);
      else expect(transmittance.leafOff - transmittance.leafOn, botanicalName).toBeLessThanOrEqual(0.06);
    }
  });

  it('has belts more open without leaves, and a fallback where nobody plants a belt of it', () => {
    for (const species of CATALOGUE) {
      const habit = beltHabitOf(species);
      expect(habit.opticalPorosityLeafOff, species.botanicalName).toBeGreaterThanOrEqual(
        habit.opticalPorosityLeafOn,
      );
      expect(habit.widthM).toBeGreaterThan(0);
    }
    expect(beltHabitOf(null).opticalPorosityLeafOn).toBe(0.4);
    expect(beltHabitOf(null).opticalPorosityLeafOff).toBeCloseTo(0.4 ** 0.35, 9);
  });

  it('solves each density once', () => {
    for (const species of CATALOGUE) {
      const density = crownDensity(species);
      expect(crownDensity(species)).toBe(density);
      expect(density.leafAreaDensityM2M3, species.botanicalName).toBeGreaterThan(0.2);
      expect(density.leafAreaDensityM2M3, species.botanicalName).toBeLessThan(8);
      expect(density.leafOffRatio, species.botanicalName).toBeGreaterThan(0.2);
      expect(density.leafOffRatio, species.botanicalName).toBeLessThanOrEqual(1);
    }
  });

  it('says so where a plant is dangerous', () => {
    const cautions = (name: string) =>
      CATALOGUE.find((species) => species.botanicalName === name)!.cautions.join(' ');
    expect(cautions('Taxus baccata')).toContain('deadly');
    expect(cautions('Robinia pseudoacacia')).toContain('horses');
    expect(cautions('Prunus avium')).toContain('Wilted');
    expect(cautions('Acer rubrum')).toContain('horses');
    expect(cautions('Prunus laurocerasus')).toContain('poisonous');
    expect(cautions('Elaeagnus umbellata')).toContain('invasive');
    for (const species of CATALOGUE.filter(({ role }) => role === 'N')) {
      expect(species.cautions.join(' '), species.botanicalName).toContain('allergic');
    }
  });
});
