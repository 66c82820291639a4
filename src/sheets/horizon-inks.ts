import { INK, PAPER, RULE, SOFT_INK, STONE, WATER } from './inks.ts';

/** What foliage lets through, most first: the share from which a tint holds, and its words. */
export const LET_THROUGH = [
  { from: 0.65, words: 'lets most through', range: '65 % and more' },
  { from: 0.35, words: 'lets about half through', range: '35 to 65 %' },
  { from: 0.15, words: 'lets some through', range: '15 to 35 %' },
  { from: 0.05, words: 'lets little through', range: '5 to 15 %' },
  { from: 0, words: 'next to nothing', range: 'under 5 %' },
] as const;
/** Foliage that lets more than this through is as good as sky. */
export const AS_GOOD_AS_SKY = 0.98;

/** The inks of the strip: its lightness falls evenly as less comes through, so that it survives a grey printer. */
export const STRIP_INKS = {
  paper: PAPER,
  ink: INK,
  softInk: SOFT_INK,
  rule: RULE,
  land: '#e6dcc3',
  stone: STONE,
  sun: '#7d4f00',
  chosen: WATER,
  /** One for each of LET_THROUGH. */
  foliage: ['#dfe5cd', '#bccaa4', '#8fa685', '#617e6e', '#3c5551'],
} as const;
