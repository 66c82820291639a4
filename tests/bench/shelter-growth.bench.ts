/**
 * How the cost of the whole rose of both seasons grows: with cells (as many belts and trees to the hectare, and the same
 * belts and trees), with belts, and with trees; exponents fitted by least squares to the logarithms. Processor time of
 * one thread, so that what else the machine does counts for little.
 */
import { runToEnd } from '../../src/numeric/steps.ts';
import { computeShelter } from '../../src/wind/compute-shelter.ts';
import { beltScene } from './forty-belts.ts';
import { slope } from './slope.ts';

const AREAS_HA = [0.1, 0.3, 1, 3, 10, 20];
const FEW_BELTS = 10;
const FEW_TREES = 100;
const BELTS = [5, 10, 20, 40, 80];
const TREES = [50, 200, 1000, 2000];
const FIELD_HA = 5;
/** A measurement shorter than this is repeated. */
const LONG_ENOUGH_MS = 1500;

export const title = 'Shelter: growth of time with cells, belts and trees, one thread';

interface Measured {
  readonly cells: number;
  readonly belts: number;
  readonly trees: number;
  readonly ms: number;
}

export function bench(): Record<string, string | number>[] {
  measured(1, FEW_BELTS, FEW_TREES);
  return [
    ...rows(
      'cells, 2 belts and 50 trees to the hectare',
      'cells',
      AREAS_HA.map((ha) => measured(ha, Math.ceil(2 * ha), Math.ceil(50 * ha))),
    ),
    ...rows(
      'cells, the same belts and trees',
      'cells',
      AREAS_HA.map((ha) => measured(ha, FEW_BELTS, FEW_TREES)),
    ),
    ...rows(
      'belts',
      'belts',
      BELTS.map((belts) => measured(FIELD_HA, belts, FEW_TREES)),
    ),
    ...rows(
      'trees',
      'trees',
      TREES.map((trees) => measured(FIELD_HA, FEW_BELTS, trees)),
    ),
  ];
}

function measured(ha: number, belts: number, trees: number): Measured {
  const request = beltScene({
    sideM: Math.round(Math.sqrt(ha * 10_000)),
    belts,
    trees,
    deciduous: Math.ceil(belts / 2),
  });
  let spent = 0;
  let least = Number.POSITIVE_INFINITY;
  while (spent < LONG_ENOUGH_MS) {
    const before = process.cpuUsage();
    runToEnd(computeShelter(request));
    const { user, system } = process.cpuUsage(before);
    const ms = (user + system) / 1000;
    least = Math.min(least, ms);
    spent += ms;
  }
  return { cells: request.grid.columns * request.grid.rows, belts, trees, ms: least };
}

function rows(
  what: string,
  over: 'cells' | 'belts' | 'trees',
  list: readonly Measured[],
): Record<string, string | number>[] {
  const exponent = (some: readonly Measured[]) =>
    slope(some.map((one) => [Math.log(one[over]), Math.log(one.ms)])).toFixed(2);
  return list.map(({ cells, belts, trees, ms }, k) => ({
    what,
    cells,
    belts,
    trees,
    ms: Math.round(ms),
    'exponent of time':
      k === list.length - 1
        ? `${exponent(list)} over all, ${exponent(list.slice(-2))} over the last two`
        : '',
  }));
}
