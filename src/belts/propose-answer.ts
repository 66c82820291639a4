import { toLonLat } from '../geo/frame.ts';
import type { LightResult } from '../light/light-types.ts';
import type { GridSpec } from '../numeric/grid.ts';
import { cellCount } from '../numeric/grid.ts';
import { beltOrBlockAtYear } from '../scene/stand-at-year.ts';
import type { FeatureOf } from '../site/document.ts';
import { isInside } from '../site/plane-geometry.ts';
import { stripArea } from '../site/strip-area.ts';
import type { ShelterResult } from '../wind/shelter-types.ts';
import { drawnOption } from './propose-options.ts';
import type { BeltAlternative, ProposedBelt } from './propose-result.ts';
import type { ProposeSetting } from './propose-setting.ts';
import { DARK_BELOW } from './propose-shade.ts';
import type { BeltOption, BeltWish, WindSeason } from './propose-types.ts';
import { beltName } from './propose-words.ts';

const BANDS: Readonly<Record<WindSeason, number>> = { growing: 0, rest: 1, year: 2 };
const SEASON_LIGHT = 12;

/** Share of the counted cells on which the wind is cut by so much, and the mean cut there. */
export function shelterOver(
  { grid, windShare }: ShelterResult,
  mask: Uint8Array,
  { season, cutShare }: BeltWish,
): { over: number; mean: number } {
  const first = BANDS[season] * cellCount(grid);
  let [count, over, sum] = [0, 0, 0];
  for (let cell = 0; cell < mask.length; cell++) {
    const share = windShare[first + cell];
    if (!mask[cell] || Number.isNaN(share)) continue;
    count++;
    sum += 1 - share;
    if (1 - share >= cutShare) over++;
  }
  return count > 0 ? { over: over / count, mean: sum / count } : { over: 0, mean: 0 };
}

/** Mean light on the field without and with belts, and the ground that turned dark beside them. */
export function lightLost(
  without: LightResult,
  with_: LightResult,
  mask: Uint8Array,
  isUnderBelt: (cell: number) => boolean,
): { light: BeltAlternative['light']; darkM2: number } {
  const first = SEASON_LIGHT * cellCount(without.grid);
  let [count, before, after, dark] = [0, 0, 0, 0];
  for (let cell = 0; cell < mask.length; cell++) {
    const [was, is] = [without.lightShare[first + cell], with_.lightShare[first + cell]];
    if (!mask[cell] || Number.isNaN(was) || Number.isNaN(is)) continue;
    count++;
    before += was;
    after += is;
    if (was >= DARK_BELOW && is < DARK_BELOW && !isUnderBelt(cell)) dark++;
  }
  const mean = (sum: number) => (count > 0 ? sum / count : 0);
  return { light: { without: mean(before), with: mean(after) }, darkM2: dark * without.grid.cellM ** 2 };
}

/** Whether the middle of a cell lies under one of the belts. */
export function underBelts(belts: readonly BeltOption[], grid: GridSpec): (cell: number) => boolean {
  const strips = belts.flatMap(({ place, plant }) => {
    const strip = stripArea(place.line, plant.widthM / 2);
    if (!strip) return [];
    return strip.type === 'Polygon' ? [strip.coordinates] : strip.coordinates;
  });
  return (cell) => {
    const x = grid.westM + ((cell % grid.columns) + 0.5) * grid.cellM;
    const y = grid.northM - (Math.floor(cell / grid.columns) + 0.5) * grid.cellM;
    return strips.some((rings) => isInside([x, y], rings as unknown as [number, number][][]));
  };
}

/** Belts as they are listed: those along the field's sides first, clockwise from north. */
export function proposedBelts(setting: ProposeSetting, belts: readonly BeltOption[]): ProposedBelt[] {
  const { document, scene, wish } = setting;
  const { frame } = scene;
  const order = [...belts].sort(
    (a, b) =>
      Number(a.place.where === 'across') - Number(b.place.where === 'across') ||
      a.place.facingDeg - b.place.facingDeg ||
      a.place.from - b.place.from,
  );
  const named = new Map<string, number>();
  const turnDeg = (frame.convergenceRad * 180) / Math.PI;
  return order.map((option, i): ProposedBelt => {
    const { place, plant } = option;
    const plain = beltName(plant.commonName, place, (place.facingDeg + turnDeg + 360) % 360);
    const nth = (named.get(plain) ?? 0) + 1;
    named.set(plain, nth);
    const name = nth > 1 ? `${plain} (${nth})` : plain;
    const drawn = drawnOption(frame, { ...option, properties: { ...option.properties, name } });
    const feature = { type: 'Feature', id: name, ...drawn } as FeatureOf<'belt'>;
    const heightAt = (pace: 'slow' | 'usual' | 'fast') =>
      beltOrBlockAtYear(document, feature, { ...scene, year: wish.year, pace })?.heightM ?? 0;
    return {
      letter: String.fromCharCode(65 + i),
      name,
      drawn,
      line: place.line.map((at) => toLonLat(frame, at)),
      option,
      heightM: heightAt('usual'),
      heightBandM: [heightAt('slow'), heightAt('fast')],
      landM2: place.lengthM * plant.widthM,
    };
  });
}

/**
 * Says of each way what it is best at by the figures of the engines, which have the last word over the search: of two
 * that are alike the first. A way that is best at nothing is left out.
 */
export function bestOfEach(ways: readonly BeltAlternative[]): BeltAlternative[] {
  const least = (figure: (way: BeltAlternative) => number): BeltAlternative =>
    ways.reduce((best, way) => (figure(way) < figure(best) - 1e-9 ? way : best));
  const best = [
    ['land', least(({ landM2, darkM2 }) => landM2 + darkM2)],
    ['shade', least(({ light }) => light.without - light.with)],
    ['soonest', least(({ fromYear }) => fromYear.usual ?? Number.POSITIVE_INFINITY)],
  ] as const;
  return ways
    .map((way) => ({ ...way, aims: best.filter(([, at]) => at === way).map(([aim]) => aim) }))
    .filter(({ aims }) => aims.length > 0);
}

/** Whether a way is made of the same belts. */
export const isOfBelts = ({ belts }: BeltAlternative, others: readonly BeltOption[]): boolean =>
  belts.length === others.length &&
  belts.every(({ option: { plant, place } }) =>
    others.some(
      (other) =>
        other.plant.species === plant.species &&
        other.place.run === place.run &&
        other.place.from === place.from &&
        other.place.to === place.to,
    ),
  );
