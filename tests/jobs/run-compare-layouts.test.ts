import { describe, expect, it } from 'vitest';
import { PACES } from '../../src/growth/pace-band.ts';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import {
  type LayoutsRequest,
  layoutSpeeds,
  runCompareLayouts,
  runLayoutYears,
} from '../../src/jobs/run-compare-layouts.ts';
import { runFieldCut } from '../../src/jobs/run-field-cut.ts';
import type { LayoutName } from '../../src/layouts/holdings.ts';
import { answerOf } from '../../src/layouts/layout-words.ts';
import { differs, measuresOf } from '../../src/layouts/measures.ts';
import { findSpecies } from '../../src/plants/find-species.ts';
import { siteFrame, siteGround } from '../../src/scene/site-ground.ts';
import { copyLayout } from '../../src/site/actions/copy-layout.ts';
import type { SiteDocument } from '../../src/site/document.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import type { FieldFeature } from '../../src/site/records/field.ts';
import { USUAL_SHELTER_OPTIONS } from '../../src/wind/shelter-guesses.ts';
import { pairOfLayouts } from '../layouts/pair-of-layouts.ts';

const runner = createLocalRunner();

function requestOf(document: SiteDocument): LayoutsRequest {
  const frame = siteFrame(document);
  const { ground } = siteGround(document, frame, null);
  const sceneAt: LayoutsRequest['sceneAt'] = (layout, year, pace) => ({
    year,
    layout,
    pace,
    frame,
    ground,
    weather: null,
  });
  return {
    document,
    frame,
    field: document.features.find(({ id }) => id === 'f1') as FieldFeature,
    sceneAt,
    speedsOf: layoutSpeeds(runner, document, USUAL_SHELTER_OPTIONS, sceneAt),
    wind: { readingHeightM: 1.5, galeMps: 10.8, options: USUAL_SHELTER_OPTIONS },
    lightHeightM: 0.1,
  };
}

const pair = (): SiteDocument => parseSite(JSON.stringify(pairOfLayouts()), 'pair').document;
const compare = (document: SiteDocument, layouts: readonly [LayoutName, LayoutName]) =>
  runCompareLayouts(runner, requestOf(document), { layouts, year: 12, wantedShare: 0.5 });

describe('two layouts of a site', () => {
  it('differ in nothing where one is a copy of the other', async () => {
    const found = await compare(copyLayout(pair(), 'Belts first', 'Copy'), ['Belts first', 'Copy']);
    expect(measuresOf(found).filter(differs)).toEqual([]);
    expect(answerOf(found).figure).toBe('Nothing differs');
  });

  it('are the same two, whichever is named first', async () => {
    const document = pair();
    const one = await compare(document, ['Belts first', 'At once']);
    const other = await compare(document, ['At once', 'Belts first']);
    expect(other.sides[0]).toEqual(one.sides[1]);
    expect(other.sides[1]).toEqual(one.sides[0]);
    const mirrored = measuresOf(other).map(({ values: [a, b], ...rest }) => ({ ...rest, values: [b, a] }));
    expect(mirrored).toEqual(measuresOf(one));
  });

  it('are in shelter from the year that a look at every year finds', async () => {
    const request = requestOf(pair());
    for (const [layout, wantedShare] of [
      ['Belts first', 0.5],
      ['At once', 0.3],
    ] as const) {
      const { shelteredFrom } = await runLayoutYears(runner, request, layout, wantedShare);
      for (const pace of PACES) {
        let found: number | null = null;
        for (let year = 0; year <= 40 && found === null; year++) {
          const { protectedShare } = await runFieldCut(
            runner,
            request.document,
            request.sceneAt(layout, year, pace),
            request.field,
            request.wind,
          );
          if (protectedShare >= wantedShare) found = year;
        }
        expect([layout, pace, shelteredFrom[pace]]).toEqual([layout, pace, found]);
      }
      expect(shelteredFrom.fast).toBeLessThanOrEqual(shelteredFrom.slow!);
    }
  });

  it('bear in the catalogue’s year at usual growth, later at slow and sooner at fast growth', async () => {
    const { sides } = await compare(pair(), ['Belts first', 'At once']);
    const years = findSpecies('Malus domestica', undefined)!.yearsToBear!;
    const [late, soon] = sides.map((side) => side.years.crops!);
    expect([soon.trees, soon.first.usual, late.first.usual]).toEqual([2, years, 5 + years]);
    expect(soon.first.slow).toBeGreaterThanOrEqual(years);
    expect(soon.first.fast).toBeLessThanOrEqual(years);
    // Planted five years later; fast growth has the most that shelter may do for those that are planted into it.
    for (const pace of ['slow', 'usual'] as const) expect(late.half[pace]! - soon.half[pace]!).toBe(5);
    expect([4, 5]).toContain(late.half.fast! - soon.half.fast!);
    expect(sides.map((side) => side.years.treesPlantedIn)).toEqual([5, 0]);
  });

  it('stop when they are told to', async () => {
    const controller = new AbortController();
    controller.abort();
    await expect(
      runCompareLayouts(
        runner,
        requestOf(pair()),
        { layouts: ['Belts first', 'At once'], year: 12, wantedShare: 0.5 },
        { signal: controller.signal },
      ),
    ).rejects.toMatchObject({ code: 'cancelled' });
  });
});
