import { afterEach, describe, expect, test, vi } from 'vitest';
import { createLocalRunner } from '../../src/jobs/local-runner.ts';
import { parseSite } from '../../src/site/parse-site.ts';
import { keepReferencesLoaded } from '../../src/state/load-references.ts';
import { sceneOptions } from '../../src/state/scene-options.ts';
import { createAppStore } from '../../src/state/store.ts';
import { surfaceWords } from '../../src/state/surface-words.ts';
import { woodsAround } from '../../src/state/woods-around.ts';
import { openSite } from '../cli/small-site.ts';
import { groundM, groundTif, topsTif } from '../cli/surface-files.ts';

const fileOf = (name: string, bytes: Uint8Array<ArrayBuffer> | string) => new File([bytes], name);
const woods = (xM: number, yM: number) => (Math.max(Math.abs(xM), Math.abs(yM)) > 40 && yM < 0 ? 15 : 0.2);

let stop = () => {};
afterEach(() => stop());

function opened() {
  const { document } = parseSite(JSON.stringify(openSite()), 'small.site.geojson');
  const store = createAppStore(document);
  stop = keepReferencesLoaded(store, createLocalRunner());
  const words = () => surfaceWords(store.getState());
  const read = (what: 'terrain' | 'surface') =>
    vi.waitFor(() => expect(store.getState()[what]).not.toBeNull(), { timeout: 5000 });
  const surfaceInScene = () => {
    const state = store.getState();
    if (!state.ground) throw new Error('no ground');
    return sceneOptions(state, state.ground).surface;
  };
  return { store, words, read, surfaceInScene };
}

describe('a surface file on the screen', () => {
  test('waits for the terrain, then says in words what it gives, and can be taken away', async () => {
    const { store, words, read, surfaceInScene } = opened();
    expect(words()).toBeNull();
    await store.getState().openSurface(fileOf('tops.tif', topsTif(woods)));
    expect(store.getState().message?.text).toMatch(/^tops\.tif waits for a terrain raster/);
    expect(words()).toMatchObject({
      tone: 'warning',
      text: expect.stringMatching(/waits for a terrain raster/),
    });
    await read('surface');
    expect(surfaceInScene()).toBeNull();

    await store.getState().openFiles([fileOf('ground.tif', groundTif())]);
    await read('terrain');
    expect(surfaceInScene()).toBe(store.getState().surface);
    expect(words()).toEqual({
      tone: 'plain',
      text: expect.stringMatching(
        /^tops\.tif covers \d+ m by \d+ m of land in cells of 2\.\d m\. Woods up to 15\.0 m stand on 4\d % of it; where it is lowest it lies 0\.2 m above the terrain\.$/,
      ),
    });
    // What is shown on the map is what shades: none in the field, and the same grid while nothing changes.
    const shown = woodsAround(store.getState());
    expect(shown?.values.some((heightM) => heightM > 14)).toBe(true);
    expect(woodsAround(store.getState())).toBe(shown);

    store.getState().edit('Leave out', (document) => ({
      ...document,
      site: { ...document.site, surfaceFile: undefined },
    }));
    await vi.waitFor(() => expect(store.getState().surface).toBeNull());
    expect(words()).toBeNull();
    store.getState().undo();
    await read('surface');
  });

  test('that cannot be right says so in a sentence', async () => {
    const { store, words, read } = opened();
    await store.getState().openFiles([fileOf('ground.tif', groundTif())]);
    await store.getState().openSurface(
      fileOf(
        'heights.tif',
        topsTif((x, y) => woods(x, y) - groundM(x, y)),
      ),
    );
    await read('terrain');
    await read('surface');
    expect(words()).toMatchObject({
      tone: 'warning',
      text: expect.stringMatching(
        /^heights\.tif: most of the surface lies .* below the terrain of ground\.tif/,
      ),
    });
  });

  test('that is none is refused, and the site keeps what it had', async () => {
    const { store } = opened();
    for (const [file, words] of [
      [fileOf('words.tif', 'these are words'), /^words\.tif: this is not a TIFF file/],
      [fileOf('empty.tif', ''), /^empty\.tif: the file is empty/],
    ] as const) {
      await store.getState().openSurface(file);
      expect(store.getState().message).toMatchObject({ tone: 'warning', text: expect.stringMatching(words) });
      expect(store.getState().document.site.surfaceFile).toBeUndefined();
    }
  });
});
