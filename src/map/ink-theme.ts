import { useEffect, useState } from 'react';

/** The inks of the map as #rrggbb, taken from the page's own roles so that light and dark follow it. */
export interface InkTheme {
  readonly paper: string;
  readonly sheet: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly rule: string;
  readonly leaf: string;
  readonly leafWash: string;
  readonly clay: string;
  readonly water: string;
  readonly dark: boolean;
}

const ROLES = {
  paper: ['--paper', '#faf8f2'],
  sheet: ['--sheet', '#fffefb'],
  ink: ['--ink', '#1d2a26'],
  inkSoft: ['--ink-soft', '#55625d'],
  rule: ['--rule', '#d9d5c8'],
  leaf: ['--leaf', '#2f6b4f'],
  leafWash: ['--leaf-wash', '#e4efe6'],
  clay: ['--clay', '#a8491f'],
  water: ['--water', '#1f5f7a'],
} as const;

/** MapLibre and terra-draw want six hexadecimal digits; anything else in the style sheet falls back. */
const asHex = (found: string, fallback: string): string => {
  const text = found.trim();
  if (/^#[0-9a-f]{6}$/i.test(text)) return text;
  if (/^#[0-9a-f]{3}$/i.test(text)) return `#${[...text.slice(1)].map((digit) => digit + digit).join('')}`;
  return fallback;
};

function readInkTheme(): InkTheme {
  const style = getComputedStyle(document.documentElement);
  const inks = Object.fromEntries(
    Object.entries(ROLES).map(([role, [name, fallback]]) => [
      role,
      asHex(style.getPropertyValue(name), fallback),
    ]),
  ) as Record<keyof typeof ROLES, string>;
  return { ...inks, dark: Number.parseInt(inks.paper.slice(3, 5), 16) < 128 };
}

/** The current inks; changes when the page's theme does. */
export function useInkTheme(): InkTheme {
  const [theme, setTheme] = useState(readInkTheme);
  useEffect(() => {
    const read = () =>
      setTheme((before) => {
        const now = readInkTheme();
        return JSON.stringify(now) === JSON.stringify(before) ? before : now;
      });
    const observer = new MutationObserver(read);
    observer.observe(document.documentElement, {
      attributes: true,
      attributeFilter: ['data-theme', 'class'],
    });
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    scheme.addEventListener('change', read);
    read();
    return () => {
      observer.disconnect();
      scheme.removeEventListener('change', read);
    };
  }, []);
  return theme;
}
