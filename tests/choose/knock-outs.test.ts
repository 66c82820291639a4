import { describe, expect, it } from 'vitest';
import { choiceOf } from '../../src/choose/choice.ts';
import { choiceSentences, firmSentences, knockOutSentences } from '../../src/choose/choice-words.ts';
import { isOut, judge, judgeAll, USUAL_KNOCK_OUTS } from '../../src/choose/knock-outs.ts';
import { METRIC } from '../../src/choose/measure-words.ts';
import { matterValue } from '../../src/choose/measures.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { CHOOSING_MEASURES, type KnockOut } from '../../src/site/records/choosing.ts';
import { northWind } from '../years/years-site.ts';
import { inventedField } from './invented-fields.ts';

const hollow = inventedField('Hollow', {
  ground: { cold: { hollowShare: 0.75, dammedShare: 0.75, deepestM: 3 } },
});
const open = inventedField('Open', {
  state: { shelterEnoughShare: 0.1, bothShare: 0.1 },
  shelteredFrom: { slow: null, usual: null, fast: null },
});
const siteOf = (knockOuts: readonly KnockOut[]) => northWind([], { choosing: { knockOuts: [...knockOuts] } });

describe('knock-outs', () => {
  it('are judged by the figure in its own unit, at the limit in', () => {
    const at = (atMost: number) => judge(hollow, { measure: 'hollowShare', atMost });
    expect(at(0.75)).toMatchObject({ value: 0.75, met: true });
    expect(at(0.74)).toMatchObject({ value: 0.75, met: false });
    expect(judge(open, { measure: 'shelteredM2', year: 10, atLeast: 1000 }).met).toBe(true);
    expect(judge(open, { measure: 'shelteredM2', year: 10, atLeast: 1001 }).met).toBe(false);
  });

  it('fail where the year never comes, and judge nothing that is not known', () => {
    expect(judge(open, { measure: 'shelteredFromYear', atMost: 40 }).met).toBe(false);
    expect(judge(open, { measure: 'toWaterM', atMost: 50 })).toMatchObject({ value: null, met: null });
    expect(isOut(judgeAll(open, [{ measure: 'toWaterM', atMost: 50 }]))).toBe(false);
    expect(isOut(judgeAll(hollow, USUAL_KNOCK_OUTS))).toBe(true);
  });

  it('are said with what was asked and the figure that decided', () => {
    const choice = choiceOf(
      siteOf([
        { measure: 'hollowShare', atMost: 0.1 },
        { measure: 'toAccessM', atMost: 50 },
        { measure: 'toWaterM', atMost: 80 },
      ]),
      [hollow, open],
      null,
    );
    expect(knockOutSentences(choice, METRIC)).toEqual([
      'A field must have: no frost hollow (at most 10 % of it lies in one), a lorry can get there (a path or track within 50 m) and water within 80 m.',
      'Not judged: water within 80 m; nothing of the kind is drawn anywhere.',
      'Open stays in.',
      'Hollow is out: no frost hollow (at most 10 % of it lies in one) was asked, 75 % is found.',
    ]);
    expect(choiceSentences(choice, METRIC)[0]).toContain('of Open (10 %)');
    expect(firmSentences(choice)).toEqual([
      'Open is the only one left.',
      'Without what is asked first Hollow would come first.',
    ]);
  });

  it('may leave no field, which is said', () => {
    const choice = choiceOf(siteOf([{ measure: 'areaM2', atLeast: 1e6 }]), [hollow, open], null);
    expect(choiceSentences(choice, METRIC)).toEqual([
      'Every field is knocked out: no field has all that is asked.',
    ]);
    expect(choice.firmness).toBeNull();
  });

  it('can be set on everything that the site file lists, each of which has a figure', () => {
    for (const measure of CHOOSING_MEASURES) {
      const value = matterValue(hollow, { measure, year: 10 });
      expect([measure, measure === 'toWaterM' ? value : typeof value]).toEqual([
        measure,
        measure === 'toWaterM' ? null : 'number',
      ]);
    }
  });
});

describe('a site file that says how fields are chosen', () => {
  const parse = (choosing: unknown) =>
    parseSite(JSON.stringify({ ...siteOf([]), site: { ...siteOf([]).site, choosing } }), 's.site.geojson');
  it('is read as it was written, with what it does not know kept', () => {
    const choosing = {
      knockOuts: [{ measure: 'slopeDeg', atMost: 8, why: 'the mower' }],
      order: [{ measure: 'bothM2', year: 20 }],
      enough: { light: 0.5 },
    };
    expect(parse(choosing).document.site.choosing).toEqual(choosing);
  });
  it('is refused in one sentence where it is wrong', () => {
    const wrong: [unknown, RegExp][] = [
      [
        { knockOuts: [{ measure: 'slopeDeg' }] },
        /site\.choosing\.knockOuts\[0\].*expected either atLeast or atMost/,
      ],
      [{ knockOuts: [{ measure: 'slopeDeg', atLeast: 1, atMost: 2 }] }, /expected either atLeast or atMost/],
      [{ knockOuts: [{ measure: 'beauty', atLeast: 1 }] }, /knockOuts\[0\]\.measure is "beauty".*one of/],
      [{ order: [{ measure: 'bothM2', year: 5 }] }, /order\[0\]\.year is 5/],
      [{ enough: { light: 68 } }, /enough\.light is 68/],
    ];
    for (const [choosing, sentence] of wrong) expect(() => parse(choosing)).toThrow(sentence);
  });
});
