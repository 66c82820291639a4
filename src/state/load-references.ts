import type { StoreApi } from 'zustand/vanilla';
import type { JobRunner } from '../jobs/messages.ts';
import type { Grid } from '../numeric/grid.ts';
import { terrainBox } from '../scene/site-ground.ts';
import type { SiteRecord } from '../site/records/site.ts';
import { readWeatherFile } from '../sun/weather/read-weather-file.ts';
import type { App, AppState } from './model.ts';
import { fileBytes } from './site-files.ts';

/** Every file that a site refers to. */
export const filesOf = (site: SiteRecord): string[] =>
  [
    site.terrainFile,
    site.surfaceFile,
    site.weatherFile,
    ...(site.pictures ?? []).map((picture) => picture.file),
  ].filter((name): name is string => typeof name === 'string' && name !== '');

/**
 * Reads the files that the open site refers to, whenever the site, its files or its place change: the terrain and
 * the surface are laid on the frame by jobs, the weather becomes a table, pictures are brought to hand. Names of files that are not on this
 * device go to `missingFiles`.
 */
export function keepReferencesLoaded(store: StoreApi<App>, runner: JobRunner): () => void {
  let weatherKey = '';
  let filesKey = '';
  let readings = 0;

  /** Lays a raster of elevations on the frame; each file keeps to its own last reading. */
  const rasterLoader = (
    nameOf: (site: SiteRecord) => string | null | undefined,
    take: (grid: Grid | null, description?: string) => void,
  ) => {
    let lastKey = '';
    return async (state: AppState) => {
      const name = nameOf(state.document.site);
      const box = terrainBox(state.document, state.frame);
      const key = name
        ? [
            name,
            state.frame.epsg,
            state.frame.originEastingM,
            state.frame.originNorthingM,
            ...Object.values(box),
            readings,
          ].join('|')
        : '';
      if (key === lastKey) return;
      lastKey = key;
      if (!name) return take(null);
      const bytes = await fileBytes(name);
      if (key !== lastKey) return;
      if (!bytes) return take(null);
      try {
        const result = await runner.run('ground-file', {
          fileName: name,
          bytes: bytes.slice(0),
          frame: state.frame,
          box,
        });
        if (key === lastKey) take(result.ground, result.description);
      } catch (reason) {
        if (key !== lastKey) return;
        take(null);
        store.getState().say({ tone: 'warning', text: (reason as Error).message });
      }
    };
  };
  const loadTerrain = rasterLoader(
    (site) => site.terrainFile,
    (terrain, description) => {
      store.setState({ terrain });
      if (description !== undefined) store.setState({ groundDescription: description });
    },
  );
  const loadSurface = rasterLoader(
    (site) => site.surfaceFile,
    (surface) => store.setState({ surface }),
  );

  const loadWeather = async (state: AppState) => {
    const key = state.document.site.weatherFile ? `${state.document.site.weatherFile}|${readings}` : '';
    if (key === weatherKey) return;
    weatherKey = key;
    const name = state.document.site.weatherFile;
    if (!name) return store.setState({ weather: null });
    const bytes = await fileBytes(name);
    if (key !== weatherKey) return;
    try {
      store.setState({ weather: bytes ? readWeatherFile(new Uint8Array(bytes), name) : null });
    } catch (reason) {
      store.setState({ weather: null });
      store.getState().say({ tone: 'warning', text: (reason as Error).message });
    }
  };

  const bringFiles = async (state: AppState) => {
    const names = filesOf(state.document.site);
    const key = `${names.join('|')}|${readings}`;
    if (key === filesKey) return;
    filesKey = key;
    const missing: string[] = [];
    for (const name of names) if (!(await fileBytes(name))) missing.push(name);
    if (key !== filesKey) return;
    // A new list each time: what draws the pictures looks again when it changes.
    store.setState({ missingFiles: missing });
  };

  const look = () => {
    const state = store.getState();
    void bringFiles(state);
    void loadWeather(state);
    void loadTerrain(state);
    void loadSurface(state);
  };
  const unsubscribe = store.subscribe((state, before) => {
    if (state.filesKept !== before.filesKept) readings++;
    if (
      state.document !== before.document ||
      state.frame !== before.frame ||
      state.filesKept !== before.filesKept
    )
      look();
  });
  look();
  return unsubscribe;
}
