import type { Barrier } from '../crowns/barrier.ts';
import type { LocalXY } from '../geo/frame.ts';
import { runToEnd } from '../numeric/steps.ts';
import { gridAzimuth, trueAzimuthFromDeg } from '../units/angle.ts';
import { computeShelter } from '../wind/compute-shelter.ts';
import { USUAL_SHELTER_OPTIONS } from '../wind/shelter-guesses.ts';
import { type WindRay, windRay } from '../wind/shelter-tile.ts';
import type { ShelterOptions, WindClimate } from '../wind/shelter-types.ts';
import type { SceneOnDay } from './scene-on-day.ts';
import { METER_HEIGHT_M, type SpotWind } from './spot-plan.ts';

/** No share hangs on what counts as a gale, nor on how the wind's speeds are spread. */
const ANY_GALE_MPS = 10.8;
const ANY_WEIBULL_K = 2;

/** What of the day is taken otherwise. */
export interface ShareChange {
  /** Barriers that stand instead of all. */
  readonly barriers?: readonly Barrier[];
  readonly options?: Partial<ShelterOptions>;
  /** No trees either. */
  readonly bare?: boolean;
}

/** The wind as a ray of the frame. */
export const rayOf = ({ scene }: SceneOnDay, fromDeg: number): WindRay =>
  windRay(gridAzimuth(trueAzimuthFromDeg(fromDeg), scene.convergenceRad));

/** One wind and no other, in both seasons. */
function oneWind({ fromDeg, speedMps }: SpotWind): WindClimate {
  const season = {
    calmShare: 0,
    sectors: [{ fromDeg, frequency: 1, meanSpeedMps: speedMps, weibullK: ANY_WEIBULL_K }],
  };
  return { heightM: 10, growing: season, rest: { calmShare: 1, sectors: [] } };
}

/**
 * Share of the open wind at one spot on the day, by the shelter map's own engine on a grid of one cell. NaN inside a
 * building and where the ground is not known.
 */
export function shareAt(
  day: SceneOnDay,
  [xM, yM]: LocalXY,
  wind: SpotWind,
  change: ShareChange = {},
): number {
  const { scene } = day;
  const { windShare } = runToEnd(
    computeShelter({
      scene: {
        ...scene,
        barriers: change.barriers ?? scene.barriers,
        climate: oneWind(wind),
      },
      grid: { columns: 1, rows: 1, cellM: 1, westM: xM - 0.5, northM: yM + 0.5 },
      readingHeightM: METER_HEIGHT_M,
      galeMps: ANY_GALE_MPS,
      options: {
        ...USUAL_SHELTER_OPTIONS,
        ...(change.bare ? { scatteredTrees: false } : {}),
        ...change.options,
      },
    }),
  );
  return windShare[0];
}
