/** Where a card goes so that it never covers the place it describes. */
export interface CardPlace {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
}

/** Clear of the pointer and of the finger-wide surroundings of what it points at, px. */
const OFF_PX = 22;

/** Room a card takes across, and what the legend takes of the right side, px. */
const CARD_PX = 320;
const LEGEND_PX = 268;

/**
 * Beside the pointer: to its right where there is room before the legend, else to its left; above or below the
 * side with more room. Offsets from the sheet's edges, px.
 * @param at the pointer on the sheet, px from its top left corner
 */
export function cardPlace(at: {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
}): CardPlace {
  const { x, y, widthPx, heightPx } = at;
  const roomOnRight = widthPx - LEGEND_PX - x - OFF_PX;
  const leftward = roomOnRight < CARD_PX && x > CARD_PX + OFF_PX;
  const across = leftward ? { right: widthPx - x + OFF_PX } : { left: x + OFF_PX };
  const down = y > heightPx * 0.55 ? { bottom: heightPx - y + OFF_PX } : { top: y + OFF_PX };
  return { ...across, ...down };
}
