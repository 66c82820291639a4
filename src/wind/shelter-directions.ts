import { type GridAzimuthRad, gridAzimuth, trueAzimuthFromDeg } from '../units/angle.ts';
import { type Fineness, USUAL_FINENESS } from './fineness.ts';
import { GALE_NODES } from './kernel/assembly/layout.ts';
import { profileRatio } from './profile.ts';
import type { ClimateSector, WindClimate } from './shelter-types.ts';
import { exceedanceShare } from './weibull.ts';

/** Lists of this many evenly spaced sectors have a width; any other list is exact single directions. */
const SECTOR_COUNTS = [8, 12, 16, 36];

/** Greatest share of open wind in a gale table: up to 1.2 beside an end, 1.6 times that on a crest. */
const MOST_SHARE = 2;
/** Nodes of a gale table, with one to spare. */
export const GALE_TABLE_NODES = MOST_SHARE * GALE_NODES + 2;

/** What one direction is in one season. */
export interface SeasonOfDirection {
  /** Frequency * mean speed, m/s. */
  readonly speedWeightMps: number;
  readonly frequency: number;
  /** Share of that direction's hours with a gale, by share of open wind: node / GALE_NODES. */
  readonly galeShare: Float32Array;
}

/** One direction the wind is sampled from, for every season that has it. */
export interface ShelterDirection {
  readonly fromRad: GridAzimuthRad;
  readonly growing: SeasonOfDirection | null;
  readonly rest: SeasonOfDirection | null;
}

const isEvenRose = (sectors: readonly ClimateSector[]): boolean => {
  const count = sectors.length;
  if (!SECTOR_COUNTS.includes(count)) return false;
  const turned = sectors.map((sector) => ((sector.fromDeg % 360) + 360) % 360).sort((a, b) => a - b);
  return turned.every((deg, i) => Math.abs(deg - turned[0] - (i * 360) / count) < 0.1);
};

/** Tables of the climates asked for last: a moving hand asks for the same ones at every step. */
const madeTables = new Map<string, Float32Array>();
const MOST_TABLES = 200;

/** Chance of a gale by share of the open wind, for a sector whose 10 m wind has this mean and shape. */
function galeTable(galeMps: number, mean10mMps: number, k: number): Float32Array {
  const key = `${galeMps} ${mean10mMps} ${k}`;
  const made = madeTables.get(key);
  if (made) return made;
  const table = new Float32Array(GALE_TABLE_NODES);
  for (let node = 1; node < table.length; node++) {
    table[node] = exceedanceShare(galeMps, (mean10mMps * node) / GALE_NODES, k);
  }
  if (madeTables.size >= MOST_TABLES) madeTables.clear();
  madeTables.set(key, table);
  return table;
}

/**
 * Directions to sample: sectors of an even rose of 8, 12, 16 or 36 by the middles of equal parts; any other list as it
 * stands. Directions that both seasons share are computed once. Azimuths are turned into the grid's.
 */
export function shelterDirections(
  climate: WindClimate,
  convergenceRad: number,
  galeMps: number,
  { directionsASector: aSector }: Pick<Fineness, 'directionsASector'> = USUAL_FINENESS,
): ShelterDirection[] {
  const to10m = profileRatio(climate.heightM, 10);
  const found = new Map<
    string,
    { deg: number; growing: SeasonOfDirection | null; rest: SeasonOfDirection | null }
  >();
  for (const season of ['growing', 'rest'] as const) {
    const { sectors } = climate[season];
    const samples = isEvenRose(sectors) ? aSector : 1;
    const widthDeg = 360 / sectors.length;
    sectors.forEach((sector, index) => {
      if (sector.frequency <= 0 || sector.meanSpeedMps <= 0) return;
      const frequency = sector.frequency / samples;
      const seasonOf: SeasonOfDirection = {
        speedWeightMps: frequency * sector.meanSpeedMps,
        frequency,
        galeShare: galeTable(galeMps, sector.meanSpeedMps * to10m, sector.weibullK),
      };
      for (let sample = 0; sample < samples; sample++) {
        const offsetDeg = ((sample + 0.5) / samples - 0.5) * widthDeg;
        const deg = (((sector.fromDeg + (samples > 1 ? offsetDeg : 0)) % 360) + 360) % 360;
        const key = deg.toFixed(6);
        const known = found.get(key);
        if (known && !known[season]) known[season] = seasonOf;
        else {
          const unique = known ? `${key} ${season} ${index}` : key;
          found.set(unique, { deg, growing: null, rest: null, [season]: seasonOf });
        }
      }
    });
  }
  return [...found.values()].map(({ deg, growing, rest }) => ({
    fromRad: gridAzimuth(trueAzimuthFromDeg(deg), convergenceRad),
    growing,
    rest,
  }));
}
