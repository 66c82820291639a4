import { describe, expect, test } from 'vitest';
import { toLonLat } from '../../src/geo/frame.ts';
import { withDrawn } from '../../src/state/draw-finished.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

const app = createAppStore(smallSite()).getState();
const place = (x: number, y: number) => [...toLonLat(app.frame, [x, y])];

describe('what is drawn', () => {
  test('a planned tree is of the chosen species, tagged on, and planted in the first year', () => {
    const view = { ...app, brush: { ...app.brush, treeSpecies: 'Juglans regia' } };
    const { document, id } = withDrawn(
      app.document,
      'tree',
      { type: 'Point', coordinates: place(5, 25) },
      view,
    );
    const tree = document.features.find((feature) => feature.id === id);
    expect(tree?.properties).toMatchObject({
      tag: 'N2',
      species: 'Juglans regia',
      status: 'planned',
      plantedYear: 2027,
    });
  });

  test('a row puts a tree at either end, at about the spacing', () => {
    const view = { ...app, brush: { ...app.brush, rowSpacingM: 8 } };
    const line = { type: 'LineString' as const, coordinates: [place(2, 28), place(35, 28)] };
    const { document } = withDrawn(app.document, 'row', line, view);
    const tags = document.features.flatMap((feature) =>
      feature.properties.kind === 'tree' ? [feature.properties.tag] : [],
    );
    expect(tags).toEqual(['N1', 'F1', 'F2', 'F3', 'F4', 'F5']);
  });

  test('fields and patches get the next free name', () => {
    const ring = {
      type: 'Polygon' as const,
      coordinates: [[place(0, 40), place(9, 40), place(9, 49), place(0, 40)]],
    };
    const once = withDrawn(app.document, 'patch', ring, app);
    const twice = withDrawn(once.document, 'patch', ring, app);
    expect(twice.document.features.at(-1)?.properties.name).toBe('Patch 2');
  });

  test('what is planned belongs to the layout on the screen; what stands is common', () => {
    const tree = { type: 'Point' as const, coordinates: place(5, 25) };
    const view = { ...app, layout: 'B' };
    const withLayouts = { ...app.document, site: { ...app.document.site, layouts: [{ name: 'B' }] } };
    const planned = withDrawn(withLayouts, 'tree', tree, view).document.features.at(-1);
    expect(planned?.properties.layout).toBe('B');
    const standing = { ...view, brush: { ...view.brush, status: 'existing' as const } };
    expect(
      withDrawn(withLayouts, 'tree', tree, standing).document.features.at(-1)?.properties.layout,
    ).toBeUndefined();
  });
});
