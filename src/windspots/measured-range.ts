import { type Curve, MEASURED_BAND, MOST_MEASURED_POROSITY } from '../wind/measured-belts.ts';
import type { ShareRange } from './spot-plan.ts';

/** A curve's share at a distance, straight between its points; null outside them. */
function shareOf(curve: Curve, distanceH: number): number | null {
  for (let i = 1; i < curve.length; i++) {
    const [[x0, share0], [x1, share1]] = [curve[i - 1], curve[i]];
    if (distanceH >= x0 && distanceH <= x1)
      return share0 + ((distanceH - x0) / (x1 - x0)) * (share1 - share0);
  }
  return null;
}

/** The quietest places of the nine belts lay from about two heights on: so much nearer is still there. */
const ABOUT_H = 0.25;

/** Between the best and the weakest belt that was measured at a distance in heights; null: none was, or none as open. */
export function measuredRange(distanceH: number, porosity: number): ShareRange | null {
  if (porosity > MOST_MEASURED_POROSITY) return null;
  const [firstH] = MEASURED_BAND.best[0];
  const atH = distanceH < firstH && distanceH >= firstH - ABOUT_H ? firstH : distanceH;
  const low = shareOf(MEASURED_BAND.best, atH);
  const high = shareOf(MEASURED_BAND.weakest, atH);
  return low === null || high === null ? null : { low, high };
}
