import { describe, expect, it } from 'vitest';
import { addCare } from '../../../src/site/actions/add-care.ts';
import { changeCare } from '../../../src/site/actions/change-care.ts';
import { takeAwayCare } from '../../../src/site/actions/take-away-care.ts';
import type { SiteDocument } from '../../../src/site/document.ts';
import { featureById } from '../../../src/site/find-feature.ts';
import { parseSite } from '../../../src/site/parse-site.ts';
import type { CareRecord } from '../../../src/site/records/care.ts';
import { serialiseSite } from '../../../src/site/serialise-site.ts';
import { BadInputError } from '../../../src/units/bad-input.ts';
import { oneOfEach } from '../small-site.ts';

const careOf = (document: SiteDocument, id: string): unknown => featureById(document, id).properties.care;
const coppice: CareRecord = { what: 'coppice', year: 2034, everyYears: 7 };
const thin: CareRecord = { what: 'thin', year: 2030, share: 0.2 };

describe('adding care', () => {
  it('puts it in the order of years, on several plants in one step', () => {
    const before = oneOfEach();
    const after = addCare(addCare(before, ['t1', 'b1', 'w1'], coppice), ['t1'], thin);
    expect(careOf(after, 't1')).toEqual([thin, coppice]);
    expect(careOf(after, 'b1')).toEqual([coppice]);
    expect(careOf(after, 'w1')).toEqual([coppice]);
    expect(careOf(after, 't2')).toBeUndefined();
    expect(before).toEqual(oneOfEach());
  });

  it('keeps the very same once', () => {
    const twice = addCare(addCare(oneOfEach(), ['t1'], coppice), ['t1', 't2'], { ...coppice });
    expect(careOf(twice, 't1')).toEqual([coppice]);
    expect(careOf(twice, 't2')).toEqual([coppice]);
  });

  it('is kept in the file', () => {
    const document = addCare(oneOfEach(), ['t1'], coppice);
    const again = parseSite(serialiseSite(document), 'a.site.geojson').document;
    expect(careOf(again, 't1')).toEqual([coppice]);
  });

  it('is refused for what is no plant, nobody, and what is not sound', () => {
    expect(() => addCare(oneOfEach(), ['h1'], coppice)).toThrow(
      'building "h1": care is for a tree, a belt or a block.',
    );
    expect(() => addCare(oneOfEach(), ['nobody'], coppice)).toThrow(BadInputError);
    expect(() => addCare(oneOfEach(), ['t1'], { what: 'pollard', year: 2030, heightM: -1 })).toThrow(
      /heightM is -1/,
    );
  });
});

describe('changing and taking away care', () => {
  const both = addCare(addCare(oneOfEach(), ['t1', 't2'], coppice), ['t1'], thin);

  it('changes it in every given plant that has it', () => {
    const later: CareRecord = { ...coppice, year: 2028 };
    const after = changeCare(both, ['t1', 't2', 'b1'], coppice, later);
    expect(careOf(after, 't1')).toEqual([later, thin]);
    expect(careOf(after, 't2')).toEqual([later]);
    expect(careOf(after, 'b1')).toBeUndefined();
    expect(careOf(changeCare(both, ['t2'], coppice, later), 't1')).toEqual([thin, coppice]);
  });

  it('takes it away, and with the last one the property', () => {
    const after = takeAwayCare(both, ['t1', 't2'], coppice);
    expect(careOf(after, 't1')).toEqual([thin]);
    expect('care' in featureById(after, 't2').properties).toBe(false);
  });

  it('undoes what was added', () => {
    expect(takeAwayCare(addCare(oneOfEach(), ['t1', 'b1'], coppice), ['t1', 'b1'], coppice)).toEqual(
      oneOfEach(),
    );
  });
});
