import type { BandSet } from '../units/bands.ts';

export interface BandRange {
  readonly name: string;
  readonly ink: string;
  /** "68–84 %", "over 84 %", "under 30 %"; empty where the band's name already says it. */
  readonly range: string;
}

const number = (value: number): string => String(Number(value.toFixed(2)));

/** The bands as a legend lists them, highest first, each with its range in the unit a person reads. */
export function bandRanges(set: BandSet): BandRange[] {
  const percent = set.unit === 'share';
  const unit = percent ? ' %' : set.unit === '°' ? '°' : ` ${set.unit}`;
  const shown = (value: number) => number(percent ? value * 100 : value);
  const rows = set.bands.map((band, index): BandRange => {
    const next = set.bands[index + 1]?.from;
    if (set.unit === 'clock') return { name: band.name, ink: band.ink, range: '' };
    const said = /\d/.test(band.name);
    if (said) return { name: `${band.name}${unit}`, ink: band.ink, range: '' };
    if (next === undefined)
      return { name: band.name, ink: band.ink, range: `over ${shown(band.from)}${unit}` };
    if (index === 0) return { name: band.name, ink: band.ink, range: `under ${shown(next)}${unit}` };
    return { name: band.name, ink: band.ink, range: `${shown(band.from)}–${shown(next)}${unit}` };
  });
  return rows.reverse();
}
