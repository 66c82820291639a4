import { useEffect, useRef } from 'react';

/** A page drawn as SVG text, put into the document as elements, so that it is printed in the app's own typeface. */
export function SvgPage(props: { svg: string }) {
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const parsed = new DOMParser().parseFromString(props.svg, 'image/svg+xml').documentElement;
    holder.current?.replaceChildren(document.importNode(parsed, true));
  }, [props.svg]);
  return <div ref={holder} />;
}
