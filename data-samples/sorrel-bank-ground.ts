import type { LocalBox } from '../src/geo/local-box.ts';
import { cellCentreX, cellCentreY, type Grid, gridCovering } from '../src/numeric/grid.ts';
import { seededRandom } from '../src/numeric/random.ts';

const CELL_M = 2;
/** Metres above datum in the middle of the hillside. */
const MIDDLE_M = 74;
/** The hollow of Withy Bottom: its middle, depth and reach. */
const HOLLOW = { eastM: 142, northM: -98, deepM: 4.4, reachM: 62 };

interface Swell {
  readonly alongX: number;
  readonly alongY: number;
  readonly phase: number;
  readonly heightM: number;
}

/** Long low swells, so that no part of the hillside is a ruled surface. */
function swells(seed: number): readonly Swell[] {
  const random = seededRandom(seed);
  return Array.from({ length: 9 }, () => {
    const lengthM = 35 + 150 * random();
    const course = 2 * Math.PI * random();
    return {
      alongX: (2 * Math.PI * Math.cos(course)) / lengthM,
      alongY: (2 * Math.PI * Math.sin(course)) / lengthM,
      phase: 2 * Math.PI * random(),
      heightM: 0.0022 * lengthM * (0.5 + random()),
    };
  });
}

/**
 * The invented hillside: high and open in the north-west, steepest in the middle, falling south-east to a floor that
 * rises again beyond it, with a closed hollow where cold air gathers. Metres above datum at a spot (east, north).
 */
function groundM(eastM: number, northM: number, waves: readonly Swell[]): number {
  const down = (eastM - northM) / Math.SQRT2;
  const across = (eastM + northM) / Math.SQRT2;
  let elevationM = MIDDLE_M - 0.062 * down - 6.5 * Math.tanh(down / 140);
  // The far bank: the fall turns to a rise over some twenty metres.
  elevationM += 0.17 * 18 * Math.log(1 + Math.exp((down - 205) / 18));
  elevationM -= 0.012 * across;
  const away2 = (eastM - HOLLOW.eastM) ** 2 + (northM - HOLLOW.northM) ** 2;
  elevationM -= HOLLOW.deepM * Math.exp(-away2 / (2 * HOLLOW.reachM ** 2));
  for (const wave of waves) {
    elevationM += wave.heightM * Math.sin(wave.alongX * eastM + wave.alongY * northM + wave.phase);
  }
  return elevationM;
}

/** Elevations over a box of the local frame, in centimetres' steps. */
export function sorrelBankGround(box: LocalBox, seed: number): Grid {
  const spec = gridCovering(box, CELL_M);
  const waves = swells(seed);
  const values = new Float32Array(spec.columns * spec.rows);
  for (let row = 0; row < spec.rows; row++) {
    for (let column = 0; column < spec.columns; column++) {
      const elevationM = groundM(cellCentreX(spec, column), cellCentreY(spec, row), waves);
      values[row * spec.columns + column] = Math.round(elevationM * 100) / 100;
    }
  }
  return { ...spec, values };
}
