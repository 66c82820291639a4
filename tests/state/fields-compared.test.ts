import { expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import type { JobRunner } from '../../src/jobs/messages.ts';
import { addFeatures, type Drawn } from '../../src/site/actions/add-feature.ts';
import { fieldChoice, keepFieldsCompared, setChoosing } from '../../src/state/fields-compared.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSiteWithBelt } from './small-site.ts';

/** The small site with a second field beside it, in the open. */
function twoFields() {
  const site = smallSiteWithBelt();
  const field = site.features.find(({ properties }) => properties.kind === 'field')!;
  const ring = (field.geometry.coordinates as number[][][])[0].map(([lon, lat]) => [lon + 0.003, lat]);
  const second = {
    properties: { kind: 'field', name: 'Far Meadow' },
    geometry: { type: 'Polygon', coordinates: [ring] },
  } as unknown as Drawn;
  return addFeatures(site, [second]).document;
}

test('fields are compared while the dialog is open; order and conditions ask for no new maps', async () => {
  const store = createAppStore(twoFields());
  const inner = createLocalRunner();
  let asked = 0;
  const runner = {
    ...inner,
    run: (name: never, request: never, options: never) => {
      asked++;
      return inner.run(name, request, options);
    },
  } as JobRunner;
  const kept = keepFieldsCompared(store, runner);
  expect(fieldChoice(store.getState())).toBeNull();
  store.getState().show({ dialog: 'choose-field' });
  await vi.waitFor(() => expect(store.getState().fieldsCompared.status).toBe('ready'), { timeout: 60_000 });
  const choice = fieldChoice(store.getState())!;
  expect(choice.fields.map(({ name }) => name)).toEqual(['Long Meadow', 'Far Meadow']);
  expect(choice.firmness).not.toBeNull();
  expect(fieldChoice(store.getState())).toBe(choice);
  const cut = (k: number) => choice.fields[k].states.get('stands')!.windCutGrowing;
  expect(cut(0)).toBeGreaterThan(cut(1) + 0.05);

  const before = asked;
  setChoosing(store.getState(), 'Ask more of a field', {
    knockOuts: [{ measure: 'windCutGrowing', atLeast: (cut(0) + cut(1)) / 2 }],
  });
  setChoosing(store.getState(), 'Order', { order: [{ measure: 'slopeDeg' }, { measure: 'bothM2' }] });
  const after = fieldChoice(store.getState())!;
  expect(after.fields.map(({ out }) => out)).toEqual([false, true]);
  expect(store.getState().document.site.choosing?.knockOuts).toHaveLength(1);
  expect(asked).toBe(before);
  expect(store.getState().fieldsCompared).toMatchObject({ status: 'ready', stale: false });

  store.getState().undo();
  store.getState().undo();
  expect(store.getState().document.site.choosing).toBeUndefined();
  kept.dispose();
}, 90_000);
