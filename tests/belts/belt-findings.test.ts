import { describe, expect, it } from 'vitest';
import type { BeltFacts } from '../../src/belts/belt-facts.ts';
import { beltFindings } from '../../src/belts/belt-findings.ts';
import type { Darkened, FindingKind } from '../../src/belts/finding-types.ts';

const WORDS = { metres: (lengthM: number) => `${lengthM.toFixed(1)} m` };
const wind = { share: 0.4, mostFromDeg: 225, mostShare: 0.5 };

/** A mixed belt with which nothing is wrong: half open, ten heights long and more, on the windy side. */
const SOUND: BeltFacts = {
  id: 'b1',
  label: 'West belt',
  kind: 'belt',
  planned: true,
  owner: null,
  purpose: 'crops',
  mixture: { names: ['Italian alder'], oneGenus: true },
  otherRows: ['Hazel row'],
  heightM: 10,
  baseM: 0,
  porosityOn: 0.5,
  porosityOff: 0.55,
  lengthM: 120,
  carriedOnBy: [],
  gaps: [],
  paths: [],
  fieldName: 'Long Meadow',
  side: { facingDeg: 270, growing: wind, rest: wind },
  growing: { bareDays: 0, days: 183, meanSpeedMps: 3.5 },
  rest: { bareDays: 140, days: 182, meanSpeedMps: 5 },
};

const kinds = (part: Partial<BeltFacts>, darkens: readonly Darkened[] | null = null): FindingKind[] =>
  beltFindings({ ...SOUND, ...part }, darkens, WORDS).map(({ kind }) => kind);
const says = (part: Partial<BeltFacts>) => beltFindings({ ...SOUND, ...part }, null, WORDS)[0].says;

describe('what is wrong with a belt', () => {
  it('is nothing where nothing is', () => {
    expect(beltFindings(SOUND, [], WORDS)).toEqual([]);
  });

  // Density classes and length: NRCS slide set on windbreaks (reference, section 1). Density is 1 less the porosity.
  it.each([
    ['crops', 0.39, 'too dense'],
    ['crops', 0.4, null],
    ['crops', 0.6, null],
    ['crops', 0.61, 'too open'],
    ['stock', 0.36, 'too open'],
    ['stock', 0.35, null],
    ['stock', 0.05, null],
  ] as const)('for %s, daylight through it %f: %s', (purpose, porosity, kind) => {
    expect(kinds({ purpose, porosityOn: porosity, porosityOff: porosity })).toEqual(kind ? [kind] : []);
  });

  it('calls a belt that filters 70 % of the wind’s way too dense for crops, not one that lets 70 % through', () => {
    expect(says({ porosityOn: 0.3, porosityOff: 0.3 })).toContain('70 % of it is closed in leaf (30 %');
    expect(kinds({ porosityOn: 0.7, porosityOff: 0.7 })).toEqual(['too open']);
  });

  it('is its length below ten heights of the 20-year belt, with what carries it on', () => {
    expect(kinds({ lengthM: 100 })).toEqual([]);
    expect(kinds({ lengthM: 99 })).toEqual(['too short']);
    expect(kinds({ lengthM: 60, carriedOnBy: [{ label: 'South belt', lengthM: 40 }] })).toEqual([]);
    expect(says({ lengthM: 45 })).toContain('45.0 m long, 4.5 times its height of 10.0 m');
    expect(kinds({ lengthM: 20, kind: 'block' })).toEqual([]);
  });

  it('is a gap, with its width and place, and a path through it', () => {
    const gap = { widthM: 8, endDeg: 178, to: 'Barn', toId: 'x' };
    expect(says({ gaps: [gap] })).toBe(
      '8.0 m are open between its south end and Barn: the wind is faster in it.',
    );
    const path = { path: 'Cart track', widthM: 3, fromEndM: 42, endDeg: 0 };
    expect(says({ paths: [path] })).toContain('Cart track goes through it 42.0 m from its north end');
  });

  it('is a raised foot', () => {
    expect(kinds({ baseM: 1.5 })).toEqual(['raised foot']);
    expect(says({ baseM: 1.5 })).toContain('Open below to 1.5 m, 15 % of its height');
    expect(kinds({ baseM: 0.5 })).toEqual([]);
  });

  it('is the wrong side where both seasons’ wind comes from elsewhere, or nothing of its lee falls on the field', () => {
    const little = { ...wind, share: 0.1 };
    expect(kinds({ side: { facingDeg: 90, growing: little, rest: little } })).toEqual(['side']);
    expect(says({ side: { facingDeg: 90, growing: little, rest: little } })).toContain(
      'to the east of Long Meadow: 10 % of the wind of the growing season',
    );
    expect(kinds({ side: { facingDeg: 90, growing: little, rest: wind } })).toEqual([]);
    expect(kinds({ side: null })).toEqual(['side']);
  });

  it('is bare in the windier season only where it is then too open', () => {
    expect(kinds({ porosityOff: 0.75 })).toEqual(['leafless']);
    expect(says({ porosityOff: 0.75 })).toContain('Bare on 140 of the 182 days of the rest of the year');
    expect(kinds({ porosityOff: 0.58 })).toEqual([]);
    expect(kinds({ porosityOff: 0.75, growing: { ...SOUND.growing, meanSpeedMps: 6 } })).toEqual([]);
  });

  it('is one species, a standing edge without an owner, and the sun it takes', () => {
    expect(kinds({ otherRows: [] })).toEqual(['one species']);
    const alders = { names: ['Italian alder', 'grey alder'], oneGenus: true };
    expect(kinds({ otherRows: [], mixture: alders })).toEqual(['one genus']);
    expect(says({ otherRows: [], mixture: alders })).toBe(
      'Italian alder and grey alder are of one genus: most diseases and beetles of the one take the other too.',
    );
    expect(kinds({ otherRows: [], mixture: { names: ['Italian alder', 'hazel'], oneGenus: false } })).toEqual(
      [],
    );
    expect(kinds({ otherRows: [], mixture: { names: [], oneGenus: false } })).toEqual([]);
    expect(kinds({ planned: false })).toEqual(['owner']);
    expect(kinds({ planned: false, owner: 'the neighbour' })).toEqual([]);
    const dark = (hoursADay: number): Darkened => ({
      patch: 'Herb ground',
      hoursADay,
      seasonHours: hoursADay * 183,
      lightShare: 0.1,
    });
    expect(kinds({}, [dark(0.2)])).toEqual([]);
    const [finding] = beltFindings(SOUND, [dark(1.2)], WORDS);
    expect(finding.says).toContain('Herb ground 1.2 h a day (220 h)');
  });

  it('is cured in a wood as a wood is, and not as a row', () => {
    const wood = { kind: 'block', porosityOn: 0.15, porosityOff: 0.15, baseM: 2, otherRows: [] } as const;
    const cures = beltFindings({ ...SOUND, ...wood }, null, WORDS).map(({ cure }) => cure);
    expect(cures).toHaveLength(3);
    for (const cure of cures) expect(cure).not.toMatch(/row|spacing/);
  });

  it('always says what would cure it, and whose rule it is', () => {
    const all = beltFindings(
      {
        ...SOUND,
        side: null,
        porosityOn: 0.2,
        porosityOff: 0.9,
        lengthM: 5,
        baseM: 2,
        otherRows: [],
        planned: false,
      },
      null,
      WORDS,
    );
    expect(all.length).toBeGreaterThanOrEqual(7);
    for (const { cure, source } of all) {
      expect(cure).toMatch(/\.$/);
      expect(source).toMatch(/NRCS|Reid & Bird|Cleugh|common practice, no source/);
    }
  });
});
