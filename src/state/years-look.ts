import { type FieldGrid, fieldGrid } from '../belts/field-cut.ts';
import type { Pace } from '../growth/height-curve.ts';
import type { JobRunner, RunOptions } from '../jobs/messages.ts';
import type { WindReading } from '../jobs/run-field-cut.ts';
import { emptyYears, runYears, type YearsCache } from '../jobs/run-years.ts';
import type { PaceBand } from '../layouts/pace-band.ts';
import { cellCount, type Grid } from '../numeric/grid.ts';
import { takenField } from '../site/chosen-features.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { LAST_YEAR, YEARS } from '../years/growing-plants.ts';
import { canopyMask, type YearFigures, type YearMaps, yearFigures } from '../years/year-figures.ts';
import { fieldsOf } from './area-figures.ts';
import { cropLook } from './crop-look.ts';
import type { Pass } from './lane.ts';
import type { AppState } from './model.ts';
import { READING_HEIGHT_M } from './reading-height.ts';
import { sceneOptions } from './scene-options.ts';
import type { YearsBand, YearsLook } from './years-look-found.ts';

/** Cells of a metre, unless these are more than so many. */
const MOST_CELLS = 20_000;
/** Along the longer side of the field, for the first curve and for the band of slow and fast growth. */
const COARSE_ACROSS = 24;
/** Closer together while young belts grow fast. */
const COARSE_YEARS = [0, 2, 4, 6, 8, 10, 12, 15, 20, 25, 30, 35, LAST_YEAR];
const EVERY_FIFTH = YEARS.filter((year) => year % 5 === 0);
/** The thread lets a redraw through after so many years have been counted. */
const YEARS_AT_ONCE = 4;

/** The field whose years are followed: the one that is taken, else the first; null where none is drawn. */
export const followedField = (document: SiteDocument): FieldFeature | null =>
  takenField(document) ?? fieldsOf(document)[0] ?? null;

/** A metre, or what keeps the field within the most cells. */
function finestGrid(field: FieldFeature, state: AppState) {
  const finest = fieldGrid(field, state.frame, MOST_CELLS);
  const cells = cellCount(finest.grid);
  if (cells <= MOST_CELLS) return finest;
  const across = Math.max(finest.grid.columns, finest.grid.rows) * Math.sqrt(MOST_CELLS / cells);
  return fieldGrid(field, state.frame, Math.floor(across));
}

/**
 * A field through the years: a curve on coarse cells; and, in full, every fifth year cell by cell, then all of them,
 * then the coarse ones as things grow slowly and fast. A year in which nothing has changed is not worked out again.
 */
export function createYearsLook(runner: JobRunner, readingOf: (state: AppState) => WindReading) {
  const kept: Record<'fine' | Pace, YearsCache> = {
    fine: emptyYears(),
    slow: emptyYears(),
    usual: emptyYears(),
    fast: emptyYears(),
  };

  return function passes(
    state: AppState,
    ground: Grid,
    field: FieldFeature,
    full: boolean,
  ): readonly Pass<YearsLook>[] {
    const { document, layout } = state;
    // Laid out when the first pass begins: whoever asks for passes may already have their answer.
    let fineGrid: FieldGrid | null = null;
    const fine = () => {
      fineGrid ??= finestGrid(field, state);
      return fineGrid;
    };
    let coarseGrid: FieldGrid | null = null;
    const coarse = () => {
      coarseGrid ??= fieldGrid(field, state.frame, COARSE_ACROSS);
      return coarseGrid;
    };
    const optionsAt = (year: number, pace: Pace | null = null) => {
      const options = sceneOptions(state, ground, year);
      return pace === null || pace === 'usual' ? options : { ...options, pace };
    };
    const mapsOf = (of: FieldGrid, years: readonly number[], at: keyof typeof kept, run: RunOptions) =>
      runYears(
        runner,
        {
          document,
          options: optionsAt(0, at === 'fine' ? null : at),
          grid: of.grid,
          years,
          reading: readingOf(state),
          lightHeightM: READING_HEIGHT_M[state.layer],
        },
        kept[at],
        run,
      );
    /** Kept from one pass to the next. */
    const canopies = new Map<string, Uint8Array>();
    const figuresOf = async (
      of: FieldGrid,
      maps: ReadonlyMap<number, YearMaps>,
      pace: Pace,
      { signal }: RunOptions,
    ): Promise<YearFigures[]> => {
      const figures: YearFigures[] = [];
      for (const [year, ofYear] of maps) {
        const key = `${of.grid.cellM} ${pace} ${year}`;
        const canopy = canopies.get(key) ?? canopyMask(document, optionsAt(year, pace), of.grid);
        canopies.set(key, canopy);
        figures.push(yearFigures(ofYear, of.mask, canopy));
        if (figures.length % YEARS_AT_ONCE === 0) await new Promise((resolve) => setTimeout(resolve));
        signal?.throwIfAborted();
      }
      return figures;
    };
    const common = {
      fieldId: field.id,
      fieldName: field.properties.name || 'the field',
      crops: null,
      band: null,
    };
    let found: YearsLook | null = null;
    let roughly: YearFigures[] = [];

    const onCoarseCells: Pass<YearsLook> = async (signal, onProgress) => {
      const maps = await mapsOf(coarse(), COARSE_YEARS, 'usual', { signal, onProgress });
      roughly = await figuresOf(coarse(), maps, 'usual', { signal });
      found = { ...common, years: COARSE_YEARS, figures: roughly, grid: coarse().grid, maps: new Map() };
      return found;
    };
    const cellByCell =
      (years: readonly number[]): Pass<YearsLook> =>
      async (signal, onProgress) => {
        const maps = await mapsOf(fine(), years, 'fine', { signal, onProgress });
        const figures = await figuresOf(fine(), maps, 'usual', { signal });
        const crops = found?.crops ?? cropLook(document, layout, optionsAt);
        found = { ...common, years, figures, grid: fine().grid, maps, crops };
        return found;
      };
    const slowAndFast: Pass<YearsLook> = async (signal, onProgress) => {
      const ends: Partial<Record<Pace, YearFigures[]>> = { usual: roughly };
      for (const [done, pace] of (['slow', 'fast'] as const).entries()) {
        const maps = await mapsOf(coarse(), COARSE_YEARS, pace, {
          signal,
          onProgress: (part) => onProgress((done + part) / 2),
        });
        ends[pace] = await figuresOf(coarse(), maps, pace, { signal });
      }
      // The passes before it have found the years.
      found = {
        ...(found as YearsLook),
        band: bandAbout(found as YearsLook, ends as PaceBand<YearFigures[]>),
      };
      return found;
    };
    return full ? [onCoarseCells, cellByCell(EVERY_FIFTH), cellByCell(YEARS), slowAndFast] : [onCoarseCells];
  };
}

/** What slow and fast growth change on coarse cells, laid about the figures of fine ones. */
function bandAbout({ years, figures }: YearsLook, rough: PaceBand<readonly YearFigures[]>): YearsBand {
  const end = (pace: 'slow' | 'fast') =>
    COARSE_YEARS.map((year, k) => {
      const fine = figures[years.indexOf(year)];
      const of = (name: 'shelteredShare' | 'canopyShare') =>
        Math.min(1, Math.max(0, fine[name] + rough[pace][k][name] - rough.usual[k][name]));
      return { shelteredShare: of('shelteredShare'), canopyShare: of('canopyShare') };
    });
  return { years: COARSE_YEARS, slow: end('slow'), fast: end('fast') };
}
