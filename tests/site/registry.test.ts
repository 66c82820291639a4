import { describe, expect, it } from 'vitest';
import { featureById } from '../../src/site/find-feature.ts';
import { newSite } from '../../src/site/new-site.ts';
import { KINDS, REGISTRY } from '../../src/site/records/registry.ts';
import { defaultGrowingSeason } from '../../src/site/records/site.ts';
import { validateFeature } from '../../src/site/validate-feature.ts';
import { oneOfEach } from './small-site.ts';

const sampleOf = (kind: string) => oneOfEach().features.find((f) => f.properties.kind === kind)!;
const withValue = (kind: string, key: string, value: unknown) => {
  const sample = sampleOf(kind);
  return { ...sample, properties: { kind, [key]: value } };
};

describe('the kinds of features', () => {
  it('are those of the small site, each valid', () => {
    expect([...new Set(oneOfEach().features.map((f) => f.properties.kind))].sort()).toEqual(
      [...KINDS].sort(),
    );
    for (const f of oneOfEach().features) expect(() => validateFeature(f)).not.toThrow();
    expect(featureById(oneOfEach(), 'f1').id).toBe('f1');
  });

  for (const kind of KINDS) {
    const { fields, schema } = REGISTRY[kind];
    it(`have a form that covers every property the file may hold: ${kind}`, () => {
      const shape = (schema as unknown as { shape: { properties: { shape: object } } }).shape.properties
        .shape;
      const inFile = Object.keys(shape).filter((key) => key !== 'kind');
      // A field belongs to all layouts and a reading to none; what was expected of a reading stays as it was written;
      // care has a section of its own.
      const inForm = fields
        .map((f) => f.key)
        .concat(
          kind === 'field' || kind === 'measure' ? ['layout'] : [],
          kind === 'measure' ? ['expected'] : [],
          ['tree', 'belt', 'block'].includes(kind) ? ['care'] : [],
        );
      expect(inForm.sort()).toEqual(inFile.sort());
    });

    it(`have limits in the form that agree with the file's: ${kind}`, () => {
      for (const f of fields) {
        expect(f.label).toMatch(/^[A-Z]/);
        expect(f.help).toMatch(/[.]$/);
        if (f.min !== undefined) {
          const lowest = () => validateFeature(withValue(kind, f.key, f.min));
          if (f.aboveMin) expect(lowest).toThrow(`${f.key} is`);
          else expect(lowest).not.toThrow();
          expect(() => validateFeature(withValue(kind, f.key, f.min! - 1))).toThrow(`${f.key} is`);
        }
        if (f.max !== undefined) expect(() => validateFeature(withValue(kind, f.key, f.max))).not.toThrow();
        if (f.unit === 'share' || f.unit === 'year')
          expect(() => validateFeature(withValue(kind, f.key, f.max! + 1))).toThrow(`${f.key} is`);
        for (const choice of f.choices ?? [])
          expect(() => validateFeature(withValue(kind, f.key, choice.value))).not.toThrow();
        if (f.unit === 'choice')
          expect(() => validateFeature(withValue(kind, f.key, 'nonsense'))).toThrow('expected one of');
      }
    });
  }
});

describe('a new site', () => {
  it('knows its place, its time zone and the coming year', () => {
    expect(newSite([171.9, -43.6], ' Kestrel Flat ', 2026)).toEqual({
      type: 'FeatureCollection',
      site: {
        formatVersion: 1,
        name: 'Kestrel Flat',
        timeZone: 'Pacific/Auckland',
        baseYear: 2027,
        placeLonLat: [171.9, -43.6],
      },
      features: [],
    });
    expect(() => newSite([0, 95], 'x', 2026)).toThrow(
      'site.placeLonLat[1] is 95; expected a latitude from -90 to 90',
    );
  });

  it('grows in the summer of its hemisphere', () => {
    expect(defaultGrowingSeason(45)).toEqual({ firstDay: '04-01', lastDay: '09-30' });
    expect(defaultGrowingSeason(-45)).toEqual({ firstDay: '10-01', lastDay: '03-31' });
  });
});
