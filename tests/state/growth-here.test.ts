import { describe, expect, test } from 'vitest';
import {
  forgetReading,
  setSiteVigour,
  setSpeciesVigour,
  takeReadHeight,
  takeVigour,
  vigourHere,
} from '../../src/state/growth-here.ts';
import { createAppStore } from '../../src/state/store.ts';
import { beside, documentOf, HERE, thing } from '../stakes/staked-site.ts';

const alder = (id: string, heightM: number) =>
  thing(id, 'Point', beside(HERE, 20, 10), {
    kind: 'tree',
    species: 'Alnus glutinosa',
    plantedYear: 2012,
    heightM,
    measuredYear: 2026,
  });
const opened = (site = {}) => {
  const store = createAppStore(documentOf([alder('a', 15), alder('b', 16), alder('c', 15.5)], site));
  const app = () => store.getState();
  return { app, site: () => app().document.site, vigour: () => vigourHere(app()) };
};

describe('how things grow here, on the screen', () => {
  test('is worked out once for all who ask, and again when the site changes', () => {
    const { app, vigour } = opened();
    const first = vigour();
    expect(vigour()).toBe(first);
    app().show({ year: 3 });
    expect(vigour()).toBe(first);
    setSiteVigour(app(), 1.1);
    expect(vigour()).not.toBe(first);
    expect(vigour().now).toBe(1.1);
  });

  test('is taken over from the measured heights in one step, and undone in one', () => {
    const { app, site, vigour } = opened();
    const { fit, before } = vigour();
    takeVigour(app(), vigour());
    expect(site().vigour).toBe(Number(fit!.site.vigour.toFixed(2)));
    expect(site().species).toEqual([
      { name: 'Alnus glutinosa', vigour: Number(fit!.species[0].vigour.toFixed(2)) },
    ]);
    expect(vigour().isNews).toBe(false);
    expect(vigour().before!.meanShare).toBeLessThan(before!.meanShare);
    app().undo();
    expect(site().vigour).toBeUndefined();
    expect(site().species).toBeUndefined();
  });

  test('keeps what the site says of a species, however its name is written there', () => {
    const own = { name: 'alnus  GLUTINOSA', matureHeightM: 20 };
    const { app, site } = opened({ species: [own, { name: 'Juglans regia', matureSpreadM: 14 }] });
    setSpeciesVigour(app(), 'Alnus glutinosa', 1.2);
    expect(site().species).toEqual([
      { ...own, vigour: 1.2 },
      { name: 'Juglans regia', matureSpreadM: 14 },
    ]);
    setSpeciesVigour(app(), 'Alnus glutinosa', 1);
    expect(site().species?.[0]).toEqual(own);
  });

  test('an entry that holds nothing else goes with its vigour', () => {
    const { app, site } = opened();
    setSpeciesVigour(app(), 'Alnus glutinosa', 0.8);
    expect(site().species).toEqual([{ name: 'Alnus glutinosa', vigour: 0.8 }]);
    setSpeciesVigour(app(), 'Alnus glutinosa', 1);
    expect(site().species).toBeUndefined();
  });

  test('refuses a silly number in a sentence, and changes nothing', () => {
    const { app, site } = opened();
    setSiteVigour(app(), 9);
    expect(site().vigour).toBeUndefined();
    expect(app().message).toMatchObject({ tone: 'warning', text: expect.stringContaining('vigour') });
  });

  test('a height that is read on a day is kept with it, counts for its season, and can be forgotten', () => {
    const { app, vigour } = opened();
    takeReadHeight(app(), 'a', { heightM: 16.24, date: '2027-05-02', method: 'by a stick' });
    const tree = () => app().document.features.find(({ id }) => id === 'a')?.properties;
    // Early May: most of the season of 2027 is still to come.
    expect(tree()).toMatchObject({ heightM: 16.2, measuredYear: 2026 });
    expect(vigour().readings.filter(({ of }) => of === 'a')).toHaveLength(2);
    const { reading } = vigour().readings.filter(({ of }) => of === 'a')[1];
    expect(reading).toMatchObject({ date: '2027-05-02', method: 'by a stick' });
    forgetReading(app(), 'a', reading.measure!);
    expect(tree()).toMatchObject({ heightM: 15, measuredYear: 2026 });
    app().undo();
    app().undo();
    expect(vigour().readings.filter(({ of }) => of === 'a')).toHaveLength(1);
  });
});
