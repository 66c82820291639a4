import { STRONG_MPS } from '../sun/weather/wind-coverage.ts';
import { roughnessClass } from './profile.ts';
import type { WindRests } from './site-climate.ts';

const GIVEN: Readonly<Record<Exclude<WindRests['on'], 'file'>, string>> = {
  words: 'From what was said in words, as the wind of the site itself.',
  drawn: 'Drawn by hand, as the wind of the site itself.',
  table: 'From a table of winds.',
  site: 'From the sectors of the site file.',
  nothing: 'Nothing is known of the wind here: the same light wind is taken from every side.',
};

const count = (hours: number): string => hours.toLocaleString('en-GB');

/** "open farmland, grass, hardly a hedge (roughness length 0.03 m)". */
const landWords = (roughnessM: number): string =>
  `${roughnessClass(roughnessM).words} (roughness length ${roughnessM} m)`;

/** What a wind rests on, in sentences: the same on the screen, on paper and on the command line. */
export function restsWords(
  { on, measured, site, factor, hours }: WindRests,
  fileName: string | null | undefined,
): string[] {
  const given =
    on === 'file' && hours
      ? `From the ${count(hours.hours)} hours of ${fileName ?? 'the weather file'}: as measured, ${count(hours.strong)} of them reach ${STRONG_MPS} m/s. Figures here come from a Weibull curve fitted to each direction, which smooths such rare hours.`
      : GIVEN[on === 'file' ? 'site' : on];
  if (!measured || !site) return [given];
  const there = `Measured ${measured.heightM} m above ${landWords(measured.roughnessM)}`;
  const unchanged = measured.heightM === site.heightM && measured.roughnessM === site.roughnessM;
  if (unchanged) return [given, `${there}, and taken as it is.`];
  return [
    given,
    `${there}; moved to ${site.heightM} m above ${landWords(site.roughnessM)}: speeds times ${factor.toFixed(2)}.`,
  ];
}
