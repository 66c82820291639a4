import type { YearLight } from '../light/light-types.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { sameContent } from '../numeric/same-content.ts';
import type { KeptScenes } from '../scene/kept-scenes.ts';
import type { SceneOptions } from '../scene/options.ts';
import { withThingsNear } from '../scene/things-near.ts';
import { QUICK_FINENESS } from '../wind/fineness.ts';
import type { ShelterResult, WindClimate } from '../wind/shelter-types.ts';
import { withGroundNear } from './ground-near.ts';
import { inLanes } from './lanes.ts';
import type { JobRunner, RunOptions } from './messages.ts';
import type { WindReading } from './run-field-cut.ts';

/** A state of the site in which a field is looked at. */
export interface Moment {
  readonly options: SceneOptions;
  /** By how much the wind comes from further round, clockwise, degrees; absent: as the site has it. */
  readonly windTurnDeg?: number;
}

/** Light and shelter of a field in one state. */
export interface Look {
  readonly light: YearLight;
  readonly shelter: ShelterResult;
}

export interface LooksRequest {
  readonly scenes: KeptScenes;
  readonly reading: WindReading;
  readonly lightHeightM: number;
}

/** Share of the work that light is, about. */
const LIGHT_PART = 0.6;

/** Light and shelter on a grid in several states, in their order; what is the same in two is looked at once. */
export async function looksAt(
  runner: JobRunner,
  { scenes, reading, lightHeightM }: LooksRequest,
  grid: GridSpec,
  moments: readonly Moment[],
  { signal, onProgress }: RunOptions,
): Promise<Look[]> {
  const { scene, years } = scenes.light(moments.map(({ options }) => options));
  const first = years.map((things, k) => years.findIndex((each, i) => i === k || sameContent(each, things)));
  const lit = [...new Set(first)];
  // The same things shelter alike in the same wind.
  const blown = first.map((k, i) =>
    moments.findIndex((moment, j) => first[j] === k && moment.windTurnDeg === moments[i].windTurnDeg),
  );
  const sheltered = [...new Set(blown)];
  let [lightDone, windDone] = [0, 0];
  const tell = () => onProgress?.(LIGHT_PART * lightDone + (1 - LIGHT_PART) * windDone);
  const [lights, shelters] = await Promise.all([
    runner.run(
      'light-years',
      { scene, years: lit.map((k) => years[k]), grid, readingHeightM: lightHeightM, coarse: true },
      {
        signal,
        onProgress: (done) => {
          lightDone = done;
          tell();
        },
      },
    ),
    // One after another beside the light: other fields fill the other threads.
    inLanes(sheltered, 1, async (k) => {
      const { options, windTurnDeg = 0 } = moments[k];
      const open = scenes.shelter(options);
      const near = withGroundNear(
        withThingsNear({ ...open, climate: turned(open.climate, windTurnDeg) }, grid),
        [grid],
      );
      const result = await runner.run(
        'shelter',
        { ...reading, scene: near, grid, fineness: QUICK_FINENESS },
        { signal },
      );
      windDone += 1 / sheltered.length;
      tell();
      return result;
    }),
  ]);
  return moments.map((_, k) => ({
    light: lights[lit.indexOf(first[k])],
    shelter: shelters[sheltered.indexOf(blown[k])],
  }));
}

/** The same wind from further round. */
function turned(climate: WindClimate, byDeg: number): WindClimate {
  if (byDeg === 0) return climate;
  const season = ({ calmShare, sectors }: WindClimate['growing']) => ({
    calmShare,
    sectors: sectors.map((sector) => ({ ...sector, fromDeg: (sector.fromDeg + byDeg + 360) % 360 })),
  });
  return { ...climate, growing: season(climate.growing), rest: season(climate.rest) };
}
