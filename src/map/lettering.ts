/** Typefaces declared in the style's `font-faces`, and the sizes in which the map is lettered, px. */
export const FACE = { medium: 'Leeglade Medium', bold: 'Leeglade Bold' } as const;
export const TEXT_PX = { small: 13, usual: 15 } as const;
