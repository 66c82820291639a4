/**
 * Weights of what matters, of which only the order is known: every set that keeps the order is as likely as any other
 * (uniform on the ordered simplex; the rank-order methods of decision analysis, Barron and Barrett 1996 and before them
 * surrogate weights by Monte Carlo; from memory).
 */

/** One set of weights, the greatest first; they add to 1. @param random numbers in [0, 1). */
export function drawnWeights(count: number, random: () => number): number[] {
  // Shares of exponential variates are uniform on the simplex; in order they are uniform on its ordered part.
  const variates = Array.from({ length: count }, () => -Math.log(1 - random()));
  const sum = variates.reduce((total, each) => total + each, 0);
  return variates.map((each) => each / sum).sort((a, b) => b - a);
}

/** The mean of all of them, the rank-order centroid: the k-th is (1/k + 1/(k+1) + … + 1/n) / n. */
export function centreWeights(count: number): number[] {
  const weights: number[] = [];
  for (let k = count, sum = 0; k >= 1; k--) {
    sum += 1 / k;
    weights[k - 1] = sum / count;
  }
  return weights;
}
