/** Where a card goes so that it never covers the place it describes. */
export interface CardPlace {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
}

/** Clear of the pointer and of the finger-wide surroundings of what it points at, px. */
const OFF_PX = 22;

/**
 * Beside the pointer, toward the side of the map with more room. Offsets from the sheet's edges, px.
 * @param at the pointer on the sheet, px from its top left corner
 */
export function cardPlace(at: {
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
}): CardPlace {
  const { x, y, widthPx, heightPx } = at;
  const across = x > widthPx * 0.55 ? { right: widthPx - x + OFF_PX } : { left: x + OFF_PX };
  const down = y > heightPx * 0.55 ? { bottom: heightPx - y + OFF_PX } : { top: y + OFF_PX };
  return { ...across, ...down };
}
