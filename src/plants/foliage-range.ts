import { COMMON_PRACTICE, WILKINSON_RELATIVE } from './sources.ts';
import type { Species } from './species.ts';

/** Foliage as the catalogue has it, or at the denser or the more open end of its published range. */
export type Foliage = 'dense' | 'usual' | 'open';

/**
 * How far published transmittances of whole crowns lie apart. They are compared as optical depths, -ln(transmittance),
 * which are what foliage scales; a spread of 0.1 means 10 % of depth to either side.
 */
interface DepthSpread {
  readonly inLeaf: number;
  readonly leafless: number;
}

/** Half the distance between two transmittances' optical depths, as a share of the depth in their middle. */
function spreadBetween(densest: number, openest: number): number {
  const [most, least] = [-Math.log(densest), -Math.log(openest)];
  return (most - least) / (most + least);
}

/**
 * One genus measured three times: box elder .140 in leaf and .471 leafless (reductions of 85.96 and 52.88 %, Mendoza),
 * sycamore .18 and .54 (Wilkinson 1992), sugar maple .20 and .60 (Heisler 1986). A species with a published figure of
 * its own is taken to be known as well as that.
 */
const BETWEEN_SOURCES: DepthSpread = {
  inLeaf: spreadBetween(0.14, 0.2),
  leafless: spreadBetween(0.471, 0.6),
};

/**
 * Wilkinson's table from end to end: in leaf lime .11 to Scots pine .27, leafless hawthorn .44 to sycamore, birch and
 * lime .54. A species without a figure of its own may lie anywhere in it. Leafless the maples lie further apart than
 * the table's trees do, and the wider of the two is taken.
 */
const BETWEEN_SPECIES: DepthSpread = {
  inLeaf: spreadBetween(0.11, 0.27),
  leafless: Math.max(spreadBetween(0.44, 0.54), BETWEEN_SOURCES.leafless),
};

const GUESSED: readonly string[] = [COMMON_PRACTICE, WILKINSON_RELATIVE];

/** True where how much light this very species lets through is published, or given in the site's own file. */
export const isMeasured = (species: Species): boolean => !GUESSED.includes(species.transmittance.source);

/**
 * Factors on the optical depth of foliage in leaf and leafless, 1 and 1 for the usual.
 * @param measured the figure they are applied to was published for the species or given for the thing itself.
 * @param evergreen what is never leafless is as well known in winter as in summer.
 */
export function foliageFactors(
  foliage: Foliage,
  measured: boolean,
  evergreen: boolean,
): { readonly leafOn: number; readonly leafOff: number } {
  const spread = measured ? BETWEEN_SOURCES : BETWEEN_SPECIES;
  const side = foliage === 'usual' ? 0 : foliage === 'dense' ? 1 : -1;
  return {
    leafOn: 1 + side * spread.inLeaf,
    leafOff: 1 + side * (evergreen ? spread.inLeaf : spread.leafless),
  };
}
