import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { shelterOver } from '../../src/belts/propose-answer.ts';
import { fieldCells, type ProposeSetting, shelterRequest } from '../../src/belts/propose-setting.ts';
import { answerWords } from '../../src/belts/propose-words.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { runProposeBelts } from '../../src/jobs/run-propose-belts.ts';
import { runToEnd } from '../../src/numeric/steps.ts';
import { addFeatures } from '../../src/site/actions/add-feature.ts';
import { fieldNamed } from '../../src/site/chosen-features.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { oddField, settingOf } from './proposed-field.ts';

const runner = createLocalRunner();
const sample = (name: string) =>
  parseSite(
    readFileSync(new URL(`../../data-samples/${name}/${name}.site.geojson`, import.meta.url), 'utf8'),
    name,
  ).document;

/** By the engine, on cells of its own: share of the field that is sheltered enough with some belts planted. */
function measured(
  setting: ProposeSetting,
  belts: readonly { readonly drawn: never | unknown }[],
  year = setting.wish.year,
): number {
  const { document } = addFeatures(setting.document, belts.map(({ drawn }) => drawn) as never);
  const field = document.features.find(({ id }) => id === setting.wish.fieldId) as FieldFeature;
  const { grid, mask } = fieldCells(setting, field, 2500);
  const request = shelterRequest(setting, document, { year, pace: 'usual' }, grid);
  return shelterOver(runToEnd(computeShelter(request)), mask, setting.wish).over;
}

describe('belts proposed for a field', () => {
  test('an odd-shaped field: every way reaches what is asked, by the engine; each is best at what it says', async () => {
    const setting = settingOf(oddField());
    const progress: number[] = [];
    const found = await runProposeBelts(runner, setting, { onProgress: (done) => progress.push(done) });
    expect(found.help).toBeNull();
    expect(found.overShareNow).toBeLessThan(0.2);
    expect(found.alternatives.length).toBeGreaterThan(0);
    for (const alternative of found.alternatives) {
      expect(alternative.enough).toBe(true);
      expect(alternative.overShare.usual).toBeGreaterThanOrEqual(0.6);
      expect(measured(setting, alternative.belts)).toBeGreaterThan(0.59);
      const from = alternative.fromYear.usual!;
      expect(from).toBeLessThanOrEqual(12);
      expect(measured(setting, alternative.belts, from)).toBeGreaterThan(0.59);
      if (from > 0) expect(measured(setting, alternative.belts, from - 1)).toBeLessThan(0.61);
      expect(alternative.light.with).toBeLessThan(alternative.light.without);
      const { slow, usual, fast } = alternative.overShare;
      expect(slow).toBeLessThanOrEqual(usual + 0.02);
      expect(fast).toBeGreaterThanOrEqual(usual - 0.02);
    }
    const of = (aim: string) => found.alternatives.find(({ aims }) => aims.some((one) => one === aim));
    const lost = ({ light }: NonNullable<ReturnType<typeof of>>) => light.without - light.with;
    const [land, shade, soonest] = [of('land')!, of('shade')!, of('soonest')!];
    for (const other of found.alternatives) {
      expect(land.landM2 + land.darkM2).toBeLessThanOrEqual(other.landM2 + other.darkM2);
      expect(lost(shade)).toBeLessThanOrEqual(lost(other));
      expect(soonest.fromYear.usual).toBeLessThanOrEqual(other.fromYear.usual!);
    }
    expect(progress.at(-1)).toBe(1);
    expect(progress).toEqual([...progress].sort((a, b) => a - b));
    expect(answerWords(found)).toMatch(
      /^(One|Two|Three) .* found to have the wind cut by 30\s% or more over 60\s% of Odd corner/,
    );
  }, 120_000);

  test('what cannot be reached is said, with the most there is and what would help', async () => {
    const setting = settingOf(oddField(), { cutShare: 0.75, overShare: 0.9, year: 4 });
    const found = await runProposeBelts(runner, setting);
    expect(found.help).not.toBeNull();
    expect(found.alternatives).toHaveLength(1);
    expect(found.alternatives[0].enough).toBe(false);
    expect(found.help!.cutShare).toBeLessThan(0.75);
    expect(answerWords(found)).toMatch(/^The wind cannot be cut by 75\s% .* What would help: .*net/);
  }, 120_000);

  test('Pound Field needs none; Kestrel Flat, south of the equator, is reached', async () => {
    const sorrel = sample('sorrel-bank');
    const pound = await runProposeBelts(
      runner,
      settingOf(sorrel, { fieldId: fieldNamed(sorrel, 'Pound Field').id, cutShare: 0.3, overShare: 0.7 }),
    );
    expect(pound.alternatives).toEqual([]);
    expect(answerWords(pound)).toMatch(/^No belt is needed/);
    const kestrel = settingOf(sample('kestrel-flat'), {
      fieldId: 'field-river-terrace',
      cutShare: 0.4,
      overShare: 0.7,
      season: 'year',
    });
    const found = await runProposeBelts(runner, kestrel);
    expect(found.alternatives.length).toBeGreaterThan(0);
    for (const { overShare, belts } of found.alternatives) {
      expect(overShare.usual).toBeGreaterThanOrEqual(0.7);
      expect(measured(kestrel, belts)).toBeGreaterThan(0.69);
    }
  }, 120_000);

  test('a wish that means nothing is refused in one sentence; a stop stops', async () => {
    const setting = settingOf(oddField());
    const wish = (part: Partial<ProposeSetting['wish']>) => ({
      ...setting,
      wish: { ...setting.wish, ...part },
    });
    await expect(runProposeBelts(runner, wish({ cutShare: 1.2 }))).rejects.toThrow(
      /between 0 and 1; found 1.2/,
    );
    await expect(runProposeBelts(runner, wish({ year: 0 }))).rejects.toThrow(/1 to 100/);
    await expect(runProposeBelts(runner, wish({ fieldId: 'none' }))).rejects.toThrow(/none with the id/);
    const stop = new AbortController();
    const running = runProposeBelts(runner, setting, {
      signal: stop.signal,
      onProgress: () => stop.abort(),
    });
    await expect(running).rejects.toMatchObject({ code: 'cancelled' });
  }, 60_000);
});
