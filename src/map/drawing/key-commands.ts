/** What the keys mean while the map has the focus. */
export type KeyCommand =
  /** `turnDeg` from the top of the map, clockwise. */
  | { readonly do: 'step'; readonly turnDeg: 0 | 90 | 180 | 270; readonly lengthM: number }
  | { readonly do: 'corner'; readonly by: 1 | -1 }
  | {
      readonly do:
        | 'place'
        | 'finish'
        | 'take-back'
        | 'abandon'
        | 'delete'
        | 'add-corner'
        | 'duplicate'
        | 'move'
        | 'reshape'
        | 'undo'
        | 'zoom-in'
        | 'zoom-out'
        | 'whole-site'
        | 'horizon'
        | 'wind';
    };

export type KeyPress = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'metaKey' | 'altKey'>;

const ARROWS = { ArrowUp: 0, ArrowRight: 90, ArrowDown: 180, ArrowLeft: 270 } as const;
/** Metres an arrow key moves by: alone, with Shift, with Alt. */
const STEP_M = { plain: 1, shift: 10, alt: 0.1 } as const;

const PLAIN: Record<string, KeyCommand> = {
  Enter: { do: 'place' },
  ' ': { do: 'place' },
  Backspace: { do: 'take-back' },
  Escape: { do: 'abandon' },
  Delete: { do: 'delete' },
  Insert: { do: 'add-corner' },
  Home: { do: 'whole-site' },
  m: { do: 'move' },
  r: { do: 'reshape' },
  h: { do: 'horizon' },
  w: { do: 'wind' },
  '.': { do: 'corner', by: 1 },
  ',': { do: 'corner', by: -1 },
  '+': { do: 'zoom-in' },
  '=': { do: 'zoom-in' },
  '-': { do: 'zoom-out' },
};

/** The command of a key; null for a key that the map leaves alone. */
export function keyCommand(press: KeyPress): KeyCommand | null {
  const { key } = press;
  const control = press.ctrlKey || press.metaKey;
  if (key in ARROWS && !control) {
    const lengthM = press.altKey ? STEP_M.alt : press.shiftKey ? STEP_M.shift : STEP_M.plain;
    return { do: 'step', turnDeg: ARROWS[key as keyof typeof ARROWS], lengthM };
  }
  if (control) {
    if (press.altKey || press.shiftKey) return null;
    if (key === 'Enter') return { do: 'finish' };
    if (key.toLowerCase() === 'd') return { do: 'duplicate' };
    if (key.toLowerCase() === 'z') return { do: 'undo' };
    return null;
  }
  if (press.altKey) return null;
  return PLAIN[key] ?? PLAIN[key.toLowerCase()] ?? null;
}
