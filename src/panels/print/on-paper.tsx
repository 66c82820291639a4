import { useMemo } from 'react';
import { createPortal } from 'react-dom';
import type { PageModel } from '../../sheets/page-model.ts';
import { pageToSvg } from '../../sheets/page-to-svg.ts';
import { SvgPage } from './svg-page.tsx';
import './print.css';

/** Pages as they will be printed: shown in the dialog, and what alone goes on paper when the browser prints. */
export function OnPaper(props: { pages: readonly PageModel[]; words: string }) {
  const { pages } = props;
  const drawn = useMemo(
    () => pages.map((page, index) => ({ number: index + 1, svg: pageToSvg(page) })),
    [pages],
  );
  const [first] = pages;
  return (
    <>
      <div className="print-preview" role="img" aria-label={props.words}>
        {drawn.map(({ number, svg }) => (
          <SvgPage key={number} svg={svg} />
        ))}
      </div>
      <p className="small soft">
        In the browser’s print window choose a scale of 100 % and no extra margins: then a line of 50 m
        measures true.
      </p>
      {createPortal(
        <div className="on-paper" aria-hidden="true">
          {first ? (
            <style>{`@page { size: ${first.widthMm}mm ${first.heightMm}mm; margin: 0; }`}</style>
          ) : null}
          {drawn.map(({ number, svg }) => (
            <SvgPage key={number} svg={svg} />
          ))}
        </div>,
        window.document.body,
      )}
    </>
  );
}
