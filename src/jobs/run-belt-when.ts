import { ALONE_OPTIONS, aloneScene } from '../belts/belt-alone.ts';
import { type BeltLike, beltShape, JUDGED_AT_YEARS, plantedYearOf } from '../belts/belt-shape.ts';
import { beltSide, pointsOnField } from '../belts/belt-side.ts';
import { besideLine, sideOfLine } from '../belts/bridge.ts';
import { fieldCut, fieldGrid } from '../belts/field-cut.ts';
import { type BeltWhen, CUT_SHARE, PACES, usefulYears, WATCHED_H } from '../belts/years-to-protect.ts';
import type { Pace } from '../growth/height-curve.ts';
import { type GridSpec, gridCovering } from '../numeric/grid.ts';
import type { SceneOptions } from '../scene/options.ts';
import { siteWind } from '../scene/site-wind.ts';
import type { FeatureId, SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import type { JobRunner, RunOptions } from './messages.ts';

/** Years after planting at which a belt is looked at. */
const AGES = [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 24, 30, 40];
const CELLS_ACROSS = 30;
/** Reading height of the wind and speed of a gale, which is not asked for. */
const GALE_MPS = 10.8;

export interface BeltWhenRequest {
  readonly document: SiteDocument;
  readonly options: SceneOptions;
  readonly field: FieldFeature;
  readonly readingHeightM: number;
}

/** The wind and the ground that a belt is looked at with. */
interface Watch {
  readonly fromDeg: number;
  readonly watchedM: number;
  readonly spot: GridSpec;
}

/**
 * How a belt's lee grows, alone and in the wind from its side, at slow, usual and fast growth: the engine run over the
 * field for every year and pace.
 */
export async function runBeltWhen(
  runner: JobRunner,
  request: BeltWhenRequest,
  belt: BeltLike,
  run: RunOptions = {},
): Promise<BeltWhen> {
  const { document, options, field, readingHeightM } = request;
  const shape = beltShape(document, belt, options.frame, options);
  const plantedYear = plantedYearOf(document, belt);
  const { grid, mask } = fieldGrid(field, options.frame, CELLS_ACROSS);
  const years = AGES.map((age) => Math.max(0, plantedYear) + age);
  const watch = watchOf(request, belt);
  const nothing = years.map(() => 0);
  const protectedShare: Record<Pace, number[]> = { slow: [], usual: [], fast: [] };
  const cutAtWatched: Record<Pace, number[]> = { slow: [], usual: [], fast: [] };
  let done = 0;
  for (const pace of PACES) {
    if (!watch) {
      protectedShare[pace] = cutAtWatched[pace] = nothing;
      continue;
    }
    for (const year of years) {
      const scene = aloneScene(document, { ...options, pace, year }, [belt.id], watch.fromDeg);
      const ask = async (onGrid: GridSpec, cells: Uint8Array) => {
        if (!scene) return { meanCut: 0, protectedShare: 0 };
        const result = await runner.run(
          'shelter',
          { scene, grid: onGrid, readingHeightM, galeMps: GALE_MPS, options: ALONE_OPTIONS },
          { signal: run.signal },
        );
        return fieldCut(result, cells, CUT_SHARE);
      };
      const [overField, atSpot] = await Promise.all([ask(grid, mask), ask(watch.spot, Uint8Array.of(1))]);
      protectedShare[pace].push(overField.protectedShare);
      cutAtWatched[pace].push(atSpot.meanCut);
      done++;
      run.onProgress?.(done / (PACES.length * years.length));
    }
  }
  const fullShare = protectedShare.usual[AGES.indexOf(JUDGED_AT_YEARS)];
  const lee = { years, protectedShare, cutAtWatched };
  return {
    id: belt.id,
    label: shape.label,
    fromDeg: watch?.fromDeg ?? Number.NaN,
    plantedYear,
    fullShare,
    watchedM: watch?.watchedM ?? Number.NaN,
    ...lee,
    ...usefulYears(lee, fullShare),
  };
}

/** The wind from the side on which it stands, and the spot behind its middle; null: it shelters nothing of the field. */
function watchOf({ document, options, field }: BeltWhenRequest, belt: BeltLike): Watch | null {
  const shape = beltShape(document, belt, options.frame, options);
  const points = pointsOnField(field, options.frame);
  const { climate } = siteWind(document, options.weather);
  const side = beltSide(shape, points, options.frame.convergenceRad, climate);
  if (!side || !shape.judged) return null;
  const watchedM = WATCHED_H * shape.judged.heightM;
  const beside = besideLine(shape.line, sideOfLine(shape.line, points) * watchedM);
  const [a, b] = [beside[Math.floor((beside.length - 1) / 2)], beside[Math.ceil((beside.length - 1) / 2)]];
  const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  return {
    fromDeg: side.facingDeg,
    watchedM,
    spot: gridCovering({ west: x, east: x + 0.5, south: y, north: y + 0.5 }, 0.5),
  };
}

/** All belts of a site, one after the other. */
export async function runBeltsWhen(
  runner: JobRunner,
  request: BeltWhenRequest,
  belts: readonly BeltLike[],
  run: RunOptions = {},
): Promise<ReadonlyMap<FeatureId, BeltWhen>> {
  const found = new Map<FeatureId, BeltWhen>();
  for (const belt of belts) {
    const when = await runBeltWhen(runner, request, belt, {
      signal: run.signal,
      onProgress: (done) => run.onProgress?.((found.size + done) / belts.length),
    });
    found.set(belt.id, when);
  }
  return found;
}
