import { type FieldGrid, fieldGrid } from '../belts/field-cut.ts';
import type { Frame } from '../geo/frame.ts';
import type { Pace } from '../growth/height-curve.ts';
import type { PaceBand } from '../growth/pace-band.ts';
import { cellCount } from '../numeric/grid.ts';
import type { GrowthSpeeds, SceneOptions } from '../scene/options.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { cropLook } from '../years/crop-look.ts';
import { LAST_YEAR, YEARS } from '../years/growing-plants.ts';
import { canopyMask, type YearFigures, type YearMaps, yearFigures } from '../years/year-figures.ts';
import type { YearsBand, YearsLook } from '../years/years-look-types.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import type { WindReading } from './run-field-cut.ts';
import type { PaceSpeeds } from './run-step-years.ts';
import { emptyYears, runYears, type YearsCache } from './run-years.ts';

/** Cells of a metre, unless these are more than so many. */
const MOST_CELLS = 20_000;
/** Along the longer side of the field, for the first curve and for the band of slow and fast growth. */
const COARSE_ACROSS = 24;
/** Closer together while young belts grow fast. */
const COARSE_YEARS = [0, 2, 4, 6, 8, 10, 12, 15, 20, 25, 30, 35, LAST_YEAR];
const EVERY_FIFTH = YEARS.filter((year) => year % 5 === 0);
/** The thread lets a redraw through after so many years have been counted. */
const YEARS_AT_ONCE = 4;

export interface YearsLookRequest {
  readonly document: SiteDocument;
  readonly layout: string | null;
  readonly frame: Frame;
  readonly field: FieldFeature;
  /** The one place where a moment is made; its plants grow as they are reckoned to. */
  readonly optionsAt: (year: number) => SceneOptions;
  /** How fast they grow at each pace: shelter may do nothing, or the most that is thought possible. */
  readonly speedsAt: PaceSpeeds;
  readonly reading: WindReading;
  readonly lightHeightM: number;
}

/** One step of the way to the whole look. */
export type YearsPass = (run: RunOptions) => Promise<YearsLook>;

/** A metre, or what keeps the field within the most cells. */
function finestGrid({ field, frame }: YearsLookRequest): FieldGrid {
  const finest = fieldGrid(field, frame, MOST_CELLS);
  const cells = cellCount(finest.grid);
  if (cells <= MOST_CELLS) return finest;
  const across = Math.max(finest.grid.columns, finest.grid.rows) * Math.sqrt(MOST_CELLS / cells);
  return fieldGrid(field, frame, Math.floor(across));
}

/**
 * A field through the years: a curve on coarse cells; and, in full, every fifth year cell by cell, then all of them,
 * then the coarse ones as things grow slowly and fast. A year in which nothing has changed since the last request is
 * not worked out again.
 */
export function createYearsLook(
  runner: JobRunner,
): (request: YearsLookRequest, full: boolean) => readonly YearsPass[] {
  const kept: Record<'fine' | Pace, YearsCache> = {
    fine: emptyYears(),
    slow: emptyYears(),
    usual: emptyYears(),
    fast: emptyYears(),
  };

  return (request, full) => {
    const { document, layout, field, frame, optionsAt, speedsAt, reading, lightHeightM } = request;
    // Laid out when the first pass begins: whoever asks for passes may already have their answer.
    let fineGrid: FieldGrid | null = null;
    const fine = () => {
      fineGrid ??= finestGrid(request);
      return fineGrid;
    };
    let coarseGrid: FieldGrid | null = null;
    const coarse = () => {
      coarseGrid ??= fieldGrid(field, frame, COARSE_ACROSS);
      return coarseGrid;
    };
    const speeds: Partial<Record<Pace, GrowthSpeeds | null>> = {};
    const optionsOf = (year: number, pace: Pace): SceneOptions =>
      pace === 'usual' ? optionsAt(year) : { ...optionsAt(year), pace, speeds: speeds[pace] };
    const mapsOf = (of: FieldGrid, years: readonly number[], at: keyof typeof kept, run: RunOptions) =>
      runYears(
        runner,
        {
          document,
          options: optionsOf(0, at === 'fine' ? 'usual' : at),
          grid: of.grid,
          years,
          reading,
          lightHeightM,
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
        const canopy = canopies.get(key) ?? canopyMask(document, optionsOf(year, pace), of.grid);
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

    const onCoarseCells: YearsPass = async (run) => {
      const maps = await mapsOf(coarse(), COARSE_YEARS, 'usual', run);
      roughly = await figuresOf(coarse(), maps, 'usual', run);
      found = { ...common, years: COARSE_YEARS, figures: roughly, grid: coarse().grid, maps: new Map() };
      return found;
    };
    const cellByCell =
      (years: readonly number[]): YearsPass =>
      async (run) => {
        const maps = await mapsOf(fine(), years, 'fine', run);
        const figures = await figuresOf(fine(), maps, 'usual', run);
        const crops = found?.crops ?? cropLook(document, layout, optionsOf);
        found = { ...common, years, figures, grid: fine().grid, maps, crops };
        return found;
      };
    const slowAndFast: YearsPass = async (run) => {
      for (const pace of ['slow', 'fast'] as const)
        speeds[pace] = await speedsAt(pace, { signal: run.signal });
      const ends: Partial<Record<Pace, YearFigures[]>> = { usual: roughly };
      for (const [done, pace] of (['slow', 'fast'] as const).entries()) {
        const maps = await mapsOf(coarse(), COARSE_YEARS, pace, {
          signal: run.signal,
          onProgress: (part) => run.onProgress?.((done + part) / 2),
        });
        ends[pace] = await figuresOf(coarse(), maps, pace, run);
      }
      // The passes before it have found the years.
      found = {
        ...(found as YearsLook),
        crops: cropLook(document, layout, optionsOf),
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
