import { besideEdge } from '../choose/edge-cells.ts';
import { binWidthM, edgeBins, edgeYear, sidesOf } from '../choose/edge-profile.ts';
import { edgeGround, edgeShape, edgeStand, fieldBeside, reachOfM } from '../choose/edge-setting.ts';
import {
  EDGE_YEARS,
  type EdgeFeature,
  type EdgeNeeds,
  type EdgeProfile,
  type EdgeSide,
} from '../choose/edge-types.ts';
import { fieldStates } from '../choose/field-states.ts';
import { cellCount } from '../numeric/grid.ts';
import { lightScene, shelterScene } from '../scene/build-scene.ts';
import type { SceneOptions } from '../scene/options.ts';
import { labelOf } from '../scene/things.ts';
import type { SiteDocument } from '../site/document.ts';
import type { FieldFeature } from '../site/records/field.ts';
import { withGroundNear } from './ground-near.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import type { WindReading } from './run-field-cut.ts';
import { runLight } from './run-light.ts';

export interface EdgeRequest {
  readonly document: SiteDocument;
  /** Its year is not looked at. */
  readonly options: SceneOptions;
  readonly edge: EdgeFeature;
  /** Fields among which the one with most ground beside the edge is taken. */
  readonly fields: readonly FieldFeature[];
  readonly reading: WindReading;
  readonly lightHeightM: number;
  readonly needs: EdgeNeeds;
}

const LIGHT_PART = 0.8;
/** Band of the growing season in an answer of the light engine. */
const SEASON = 12;

/**
 * Light and shelter by the distance from an edge across a field, with planned belts and without planned trees; null where
 * the edge never stands in the years looked at, or no field lies beside it.
 */
export async function runEdgeProfile(
  runner: JobRunner,
  { document, options, edge, fields, reading, lightHeightM, needs }: EdgeRequest,
  run: RunOptions = {},
): Promise<EdgeProfile | null> {
  const states = fieldStates(document, options);
  const moments = EDGE_YEARS.map((year) => states.get(year) as SceneOptions);
  const stands = moments.map((moment) => edgeStand(document, edge, moment));
  const heightM = Math.max(...stands.map((stand) => stand?.heightM ?? 0));
  if (!(heightM > 0)) return null;
  const shape = edgeShape(edge, options.frame, Math.max(...stands.map((stand) => stand?.widthM ?? 0)));
  const field = fieldBeside(fields, options.frame, shape, heightM);
  const ground = field && edgeGround(field, options.frame, shape, heightM);
  if (!ground) return null;
  const { grid, mask } = ground;
  const beside = besideEdge(grid, mask, shape);

  // The map's own rays: those that follow a hand are off by a percent close to a wall.
  const lights: Float32Array[] = [];
  for (const [k, moment] of moments.entries()) {
    const { scene } = lightScene(document, moment);
    const light = await runLight(
      runner,
      { scene, grid, readingHeightM: lightHeightM },
      {
        signal: run.signal,
        onProgress: (done) => run.onProgress?.((LIGHT_PART * (k + done)) / moments.length),
      },
    );
    const cells = cellCount(grid);
    lights.push(light.lightShare.subarray(SEASON * cells, (SEASON + 1) * cells));
  }
  let windDone = 0;
  const winds = await Promise.all(
    moments.map(async (moment) => {
      const shelter = await runner.run(
        'shelter',
        { ...reading, scene: withGroundNear(shelterScene(document, moment).scene, [grid]), grid },
        { signal: run.signal },
      );
      windDone++;
      run.onProgress?.(LIGHT_PART + ((1 - LIGHT_PART) * windDone) / moments.length);
      // The growing season's band.
      return shelter.windShare.subarray(0, cellCount(grid));
    }),
  );

  const sides = sidesOf(beside, shape.closed, reachOfM(heightM)).map(({ cells, facingRad }): EdgeSide => {
    const farthestM = cells.reduce((most, cell) => Math.max(most, beside.distanceM[cell]), 0);
    const widthM = binWidthM(grid.cellM, farthestM);
    const facing = ((facingRad + options.frame.convergenceRad) * 180) / Math.PI;
    return {
      facingDeg: (facing + 360) % 360,
      areaM2: cells.length * grid.cellM ** 2,
      years: EDGE_YEARS.map((year, k) => {
        const maps = { lightShare: lights[k], windShare: winds[k] };
        const bins = edgeBins(grid, beside, cells, maps, needs, widthM);
        return edgeYear(year, stands[k]?.heightM ?? null, bins, needs);
      }),
    };
  });
  return {
    id: edge.id,
    label: labelOf(document, edge),
    fieldId: field.id,
    fieldName: field.properties.name ?? String(field.id),
    needs,
    cellM: grid.cellM,
    sides,
  };
}
