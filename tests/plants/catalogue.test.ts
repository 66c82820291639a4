import { describe, expect, it } from 'vitest';
import { CROWN_FORMS } from '../../src/crowns/crown-set.ts';
import { LEAF_CALENDARS } from '../../src/growth/leaf-calendar.ts';
import { CATALOGUE } from '../../src/plants/catalogue.ts';
import { beltHabitOf, crownDensity } from '../../src/plants/crown-density.ts';
import { plainName } from '../../src/plants/plain-name.ts';
import { COMMON_PRACTICE } from '../../src/plants/sources.ts';

describe('the catalogue', () => {
  it('has at least 60 trees and shrubs, each name once', () => {
    expect(CATALOGUE.length).toBeGreaterThanOrEqual(60);
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

  it('has form, clear stem, leaves, density, shelter, size and first crop of each, and says how many heights are published', () => {
    const needsCrop = new Set(['N', 'F']);
    for (const species of CATALOGUE) {
      const { botanicalName: name, curve, spread, clearStemShare, leafClass, transmittance } = species;
      expect(CROWN_FORMS, name).toContain(species.crownForm);
      expect(clearStemShare, name).toBeGreaterThanOrEqual(0);
      expect(clearStemShare, name).toBeLessThan(0.5);
      expect(LEAF_CALENDARS[leafClass], name).toBeDefined();
      expect(transmittance.leafOn, name).toBeGreaterThan(0);
      expect(transmittance.leafOff, name).toBeLessThan(1);
      expect(crownDensity(species).leafAreaDensityM2M3, name).toBeGreaterThan(0);
      const shelter = beltHabitOf(species);
      expect(shelter.opticalPorosityLeafOn, name).toBeGreaterThan(0);
      expect(shelter.opticalPorosityLeafOff, name).toBeLessThan(0.9);
      expect(shelter.source.length, name).toBeGreaterThan(3);
      expect(curve.maxHeightM, name).toBeGreaterThan(1);
      expect(spread.matureHeightM, name).toBe(curve.maxHeightM);
      // A tree that is spread much wider than it is tall, or like a post, is a slip of the pen.
      expect(spread.matureSpreadM / curve.maxHeightM, name).toBeGreaterThan(0.12);
      expect(spread.matureSpreadM / curve.maxHeightM, name).toBeLessThan(1.3);
      if (needsCrop.has(species.role)) expect(species.yearsToBear, name).toBeGreaterThan(0);
      if (species.yearsToBear !== null) expect(species.yearsToBear, name).toBeLessThanOrEqual(20);
      expect(species.vigour).toBe(1);
    }
    const published = CATALOGUE.filter(({ heightSource }) => heightSource !== COMMON_PRACTICE).length;
    const belts = CATALOGUE.filter(({ belt }) => belt !== null).length;
    console.log(
      `${CATALOGUE.length} species: ${published} with a published height, ${belts} with belt figures of their own`,
    );
    expect(published).toBeGreaterThanOrEqual(31);
  });

  it('lets through more light leafless than in leaf, and evergreens nearly the same', () => {
    for (const { botanicalName, leafClass, transmittance } of CATALOGUE) {
      expect(transmittance.leafOff, botanicalName).toBeGreaterThanOrEqual(transmittance.leafOn);
      if (!LEAF_CALENDARS[leafClass].evergreen)
        expect(transmittance.leafOff, botanicalName).toBeGreaterThan(0.4);
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
