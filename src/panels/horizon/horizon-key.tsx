import { useMemo } from 'react';
import type { HorizonInput } from '../../sheets/horizon-input.ts';
import { dotsInWords, keyEntries } from '../../sheets/horizon-key.ts';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import { SvgPage } from '../print/svg-page.tsx';

/** What the tints and lines of the strip mean: the swatches of the sheet. */
export function HorizonKey({ input }: { readonly input: HorizonInput }) {
  const entries = useMemo(
    () =>
      keyEntries(input).map(({ words, swatch }) => ({
        words,
        svg: pageToSvg({ title: words, widthMm: 9.4, heightMm: 3.9, marks: swatch(0.2, 0.2) }),
      })),
    [input],
  );
  return (
    <section className="horizon-key" aria-label="What the strip shows">
      <ul>
        {entries.map(({ words, svg }) => (
          <li key={words}>
            <span aria-hidden="true">
              <SvgPage svg={svg} />
            </span>
            {words}
          </li>
        ))}
      </ul>
      <p className="small soft">{dotsInWords(input)}</p>
    </section>
  );
}
