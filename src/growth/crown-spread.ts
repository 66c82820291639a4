import { crownDiameterFromStemM, type StemAllometry, stemDiameterCm } from './stem-allometry.ts';

/**
 * How a species' crown widens. Pinned by the spread of a full-grown tree in the open (common practice of the trade,
 * no source) and carried down to smaller trees by published allometry.
 */
export interface SpreadRule {
  /** Height and crown diameter of the full-grown tree, m. */
  readonly matureHeightM: number;
  readonly matureSpreadM: number;
  readonly group: StemAllometry;
}

/**
 * Stem diameter rises as height to this power while a tree grows (elastic similarity: McMahon 1973, Science
 * 179:1201-1204, from memory). Jucker's equation needs a stem diameter; this supplies its course over height.
 */
const STEM_EXPONENT = 1.5;

/** Spread of a tree whose species is not known, as a share of its height. Common practice, no source. */
const UNKNOWN_SPREAD_SHARE = 0.5;

/**
 * Crown diameter (m) at a height (m). The full-grown stem follows from Jucker's equation, shrinks with height to the
 * power 1.5, and Jucker's equation solved for the crown gives the spread: CD = CDm (H / Hm)^(1.5 / b - 1), close to
 * proportional for b near 0.75.
 * @param rule null: the species is not known.
 * @param sizeFactor rootstock (and vigour): scales both ends of the pin, so that a dwarfed tree keeps its shape.
 */
export function crownDiameterM(rule: SpreadRule | null, heightM: number, sizeFactor: number): number {
  if (heightM <= 0) return 0;
  if (!rule) return UNKNOWN_SPREAD_SHARE * heightM;
  const fullHeightM = rule.matureHeightM * sizeFactor;
  const fullStemCm = stemDiameterCm(rule.group, fullHeightM, rule.matureSpreadM * sizeFactor);
  return crownDiameterFromStemM(rule.group, heightM, fullStemCm * (heightM / fullHeightM) ** STEM_EXPONENT);
}
