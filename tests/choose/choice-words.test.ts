import { describe, expect, it } from 'vitest';
import { type ChosenField, choiceOf } from '../../src/choose/choice.ts';
import { choiceRests, choiceRows } from '../../src/choose/choice-words.ts';
import { METRIC } from '../../src/choose/measure-words.ts';
import { northWind } from '../years/years-site.ts';
import { inventedField } from './invented-fields.ts';

const chosen = (name: string, dammedShare: number, heldDepthM: number): ChosenField => ({
  ...inventedField(name, { ground: { cold: { dammedShare, heldDepthM } } }),
  out: false,
  judged: [],
  firstShare: null,
});
const placesOf = (fields: readonly ChosenField[]) =>
  choiceRows(fields, METRIC).find(({ what }) => what.startsWith('Place'))?.cells;

describe('the table of fields', () => {
  it('gives each its place by how much cold air it holds, in the order of the fields', () => {
    const [dry, deep, shallow] = [chosen('Dry', 0, 0), chosen('Deep', 0.4, 1.2), chosen('Shallow', 0.6, 0.3)];
    expect(placesOf([dry, deep, shallow])).toEqual(['holds none', '1 of 3', '2 of 3']);
    expect(placesOf([shallow, dry, deep])).toEqual(['2 of 3', 'holds none', '1 of 3']);
  });

  it('says nothing of places where no field holds any', () => {
    expect(placesOf([chosen('Dry', 0, 0), chosen('Airy', 0.01, 0.2)])).toBeUndefined();
  });
});

describe('what the figures rest on', () => {
  it('says what a wind cut below nothing means where there is one, and only there', () => {
    const said = (windCutRest: number) =>
      choiceRests(
        choiceOf(northWind([]), [inventedField('Field', { byState: { 20: { windCutRest } } })], null),
        METRIC,
      ).some((sentence) => sentence.startsWith('A wind cut below 0 %'));
    expect([said(-0.1), said(0), said(0.2)]).toEqual([true, false, false]);
  });
});
