import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/numeric/random.ts';
import { addFeature } from '../../../src/site/actions/add-feature.ts';
import { addLayout } from '../../../src/site/actions/add-layout.ts';
import { copyLayout } from '../../../src/site/actions/copy-layout.ts';
import { deleteFeatures } from '../../../src/site/actions/delete-feature.ts';
import { deleteLayout } from '../../../src/site/actions/delete-layout.ts';
import { duplicateFeatures } from '../../../src/site/actions/duplicate-feature.ts';
import { keepToLayout } from '../../../src/site/actions/keep-to-layout.ts';
import { moveFeatures, moveFeatureTo } from '../../../src/site/actions/move-feature.ts';
import { plantRow } from '../../../src/site/actions/plant-row.ts';
import { renameLayout } from '../../../src/site/actions/rename-layout.ts';
import { reshapeFeature } from '../../../src/site/actions/reshape-feature.ts';
import { setProperties } from '../../../src/site/actions/set-properties.ts';
import { setSite } from '../../../src/site/actions/set-site.ts';
import { startLayouts } from '../../../src/site/actions/start-layouts.ts';
import { takeField } from '../../../src/site/actions/take-field.ts';
import type { SiteDocument } from '../../../src/site/document.ts';
import { type History, push, redo, startHistory, undo } from '../../../src/site/history.ts';
import { parseSite } from '../../../src/site/parse-site.ts';
import { serialiseSite } from '../../../src/site/serialise-site.ts';
import { BadInputError } from '../../../src/units/bad-input.ts';
import { at, box, line, oneOfEach } from '../small-site.ts';

type Edit = (document: SiteDocument) => SiteDocument;

/** One random edit; about a third of them are wrong on purpose. */
function randomEdit(random: () => number): Edit {
  const metres = () => Math.round((random() - 0.3) * 300);
  const some = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const id = (d: SiteDocument) => some(d.features)?.id ?? 'nobody';
  const place = () => at(metres(), metres());
  const layout = () => some(['A', 'B', 'C', 'D']);
  const edits: Edit[] = [
    (d) =>
      addFeature(d, {
        properties: { kind: 'tree', heightM: random() * 20 - 2, crownBaseM: random() * 6, layout: layout() },
        geometry: { type: 'Point', coordinates: place() },
      }).document,
    (d) =>
      addFeature(d, {
        properties: { kind: 'belt', opticalPorosityLeafOn: random() * 1.3, widthM: random() * 8 },
        geometry: { type: 'LineString', coordinates: [place(), place(), place()] },
      }).document,
    (d) =>
      addFeature(d, {
        properties: { kind: 'patch' },
        geometry: {
          type: 'Polygon',
          coordinates: [line([0, 0], [metres(), metres()], [metres(), metres()], [metres(), 9], [0, 0])],
        },
      }).document,
    (d) => moveFeatures(d, [id(d), id(d)], metres(), metres()),
    (d) => moveFeatureTo(d, id(d), place(), place()),
    (d) => reshapeFeature(d, id(d), { type: 'Polygon', coordinates: box(0, 0, metres(), metres()) }),
    (d) => reshapeFeature(d, id(d), { type: 'Point', coordinates: place() }),
    (d) => deleteFeatures(d, [id(d)]),
    (d) => duplicateFeatures(d, [id(d)], metres(), metres()).document,
    (d) =>
      setProperties(d, [id(d)], {
        heightM: random() * 30 - 3,
        plantedYear: Math.round(2000 + random() * 600),
      }),
    (d) => setProperties(d, [id(d)], { heightM: undefined, layout: layout(), odd: { [random()]: 1 } }),
    (d) => setSite(d, { baseYear: Math.round(2000 + random() * 600) }),
    (d) =>
      plantRow(d, [place(), place()], { spacingM: random() * 60 - 5, fit: 'fitted' }, { tag: 'N' }).document,
    (d) => addLayout(d, layout()),
    (d) => copyLayout(d, layout(), layout()),
    (d) => renameLayout(d, layout(), layout()),
    (d) => deleteLayout(d, layout()),
    (d) => startLayouts(d, layout(), layout()),
    (d) => keepToLayout(d, id(d), layout()),
    (d) => takeField(d, id(d)),
  ];
  return some(edits);
}

describe('random edits', () => {
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    it(`keep the document sound and undo to exactly what it was (seed ${seed})`, () => {
      const random = seededRandom(seed);
      let history: History<SiteDocument> = startHistory(oneOfEach());
      const texts = [serialiseSite(history.present)];
      let refused = 0;
      for (let step = 0; step < 120; step++) {
        const before = history.present;
        const textBefore = JSON.stringify(before);
        try {
          const after = randomEdit(random)(before);
          if (after !== before) {
            history = push(history, `edit ${step}`, after);
            texts.push(serialiseSite(after));
          }
        } catch (error) {
          expect(error).toBeInstanceOf(BadInputError);
          expect((error as Error).message).toMatch(/expected .*\.$/);
          refused++;
        }
        expect(JSON.stringify(before)).toBe(textBefore);
      }
      expect(refused).toBeGreaterThan(5);
      expect(texts.length).toBeGreaterThan(20);
      for (const text of texts) expect(parseSite(text, 'fuzz').notes).toEqual([]);

      for (let i = texts.length - 1; i > 0; i--) {
        expect(serialiseSite(history.present)).toBe(texts[i]);
        history = undo(history);
      }
      expect(history.present).toEqual(oneOfEach());
      for (let i = 1; i < texts.length; i++) history = redo(history);
      expect(serialiseSite(history.present)).toBe(texts[texts.length - 1]);
    });
  }
});
