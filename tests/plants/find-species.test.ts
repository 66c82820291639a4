import { describe, expect, it } from 'vitest';
import { crownDensity } from '../../src/plants/crown-density.ts';
import {
  findRootstock,
  findSpecies,
  speciesList,
  suggestSpeciesName,
} from '../../src/plants/find-species.ts';
import { BadInputError } from '../../src/units/bad-input.ts';

describe('finding a species', () => {
  it('does not mind case, spaces, hybrid signs or quotes', () => {
    for (const name of [
      'Cupressus × leylandii',
      'cupressus x leylandii',
      ' Cupressus  ×leylandii ',
      'CUPRESSUS LEYLANDII',
    ]) {
      expect(findSpecies(name, undefined)?.commonName).toBe('Leyland cypress');
    }
    expect(findSpecies('Populus nigra “Italica”', undefined)?.commonName).toBe('Lombardy poplar');
    expect(findSpecies('Hippophaë rhamnoides', undefined)?.botanicalName).toBe('Hippophae rhamnoides');
    expect(findSpecies('Malus × domestica', undefined)?.commonName).toBe('apple');
    expect(findSpecies('Malus pumila', undefined)?.commonName).toBe('apple');
  });

  it('knows what it does not know, and says what was probably meant', () => {
    expect(findSpecies('Alnus cordatta', undefined)).toBeNull();
    expect(findSpecies(undefined, undefined)).toBeNull();
    expect(suggestSpeciesName('Alnus cordatta', undefined)).toBe('Alnus cordata');
    expect(suggestSpeciesName('Italian alder', undefined)).toBe('Alnus cordata');
    expect(suggestSpeciesName('Jugland regia', undefined)).toBe('Juglans regia');
    expect(suggestSpeciesName('concrete mixer', undefined)).toBeNull();
  });

  it('finds rootstocks by name', () => {
    const apple = findSpecies('Malus domestica', undefined);
    expect(findRootstock(apple, 'mm 106')?.sizeFactor).toBeCloseTo(0.48);
    expect(findRootstock(findSpecies('Prunus domestica', undefined), 'St. Julien A')?.name).toBe(
      'St Julien A',
    );
    expect(findRootstock(apple, 'Colt')).toBeNull();
    expect(findRootstock(null, 'M9')).toBeNull();
  });

  it('keeps dwarfing rootstocks in their order', () => {
    const factors = findSpecies('Malus domestica', undefined)!.rootstocks.map((stock) => stock.sizeFactor);
    expect(factors).toEqual([...factors].sort((a, b) => a - b));
  });
});

describe('the site’s own species', () => {
  it('correct the catalogue', () => {
    const own = [{ name: 'juglans regia', matureHeightM: 15, transmittanceLeafOn: 0.3, note: 'kept low' }];
    const walnut = findSpecies('Juglans regia', own)!;
    expect(walnut.curve.maxHeightM).toBe(15);
    expect(walnut.spread.matureSpreadM).toBeCloseTo(12.5, 9);
    expect(walnut.transmittance.leafOn).toBe(0.3);
    expect(walnut.commonName).toBe('walnut');
    expect(walnut.heightSource).toBe('the site file');
    expect(findSpecies('Juglans regia', undefined)!.curve.maxHeightM).toBe(18);
    expect(speciesList(own).all.length).toBe(speciesList(undefined).all.length);
  });

  it('add to it, from a relative or from a height alone', () => {
    const own = [
      { name: 'Alnus maritima', like: 'Alnus glutinosa', matureHeightM: 9, commonName: 'seaside alder' },
      { name: 'Ziziphus jujuba', matureHeightM: 8, leafClass: 'very late', yearsToBear: 4 },
    ];
    const alder = findSpecies('Alnus maritima', own)!;
    expect(alder.fixesNitrogen).toBe(true);
    expect(alder.curve.maxHeightM).toBe(9);
    expect(alder.spread.matureSpreadM).toBeCloseTo(4.5, 9);
    expect(findSpecies('Ziziphus jujuba', own)!.leafClass).toBe('very late');
    expect(crownDensity(findSpecies('Ziziphus jujuba', own)!).leafAreaDensityM2M3).toBeGreaterThan(0);
  });

  it('are read once for one document', () => {
    const own = [{ name: 'Ziziphus jujuba', matureHeightM: 8 }];
    expect(findSpecies('Ziziphus jujuba', own)).toBe(findSpecies('ziziphus  jujuba', own));
  });

  it('are refused with one sentence when wrong', () => {
    expect(() => speciesList([{ name: 'Ziziphus jujuba' }])).toThrow(BadInputError);
    expect(() => speciesList([{ name: 'Ziziphus jujuba' }])).toThrow('matureHeightM');
    expect(() => speciesList([{ name: 'Juglans regia', matureHeightM: -4 }])).toThrow(
      'site.species[0].matureHeightM',
    );
    expect(() => speciesList([{ name: 'A b', like: 'C d' }])).toThrow('“C d” is not in the catalogue');
  });
});
