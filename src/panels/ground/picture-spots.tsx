import { type PointerEvent, useRef } from 'react';
import type { PictureSize, Pixel } from '../../geo/picture-placement.ts';
import './picture-spots.css';

/** A picture with two marks that are dragged, or moved by the arrow keys (with Shift ten times as far). */
export function PictureSpots(props: {
  url: string;
  spots: readonly [Pixel, Pixel] | null;
  onSize: (size: PictureSize) => void;
  onMove: (index: 0 | 1, pixel: Pixel) => void;
}) {
  const image = useRef<HTMLImageElement>(null);
  const held = useRef<0 | 1 | null>(null);
  const natural = () => ({
    widthPx: image.current?.naturalWidth || 1,
    heightPx: image.current?.naturalHeight || 1,
  });
  const inside = (pixel: Pixel): Pixel => {
    const { widthPx, heightPx } = natural();
    return { x: Math.min(widthPx, Math.max(0, pixel.x)), y: Math.min(heightPx, Math.max(0, pixel.y)) };
  };
  const moved = (event: PointerEvent) => {
    if (held.current === null || !image.current) return;
    const box = image.current.getBoundingClientRect();
    const { widthPx, heightPx } = natural();
    props.onMove(
      held.current,
      inside({
        x: ((event.clientX - box.left) / box.width) * widthPx,
        y: ((event.clientY - box.top) / box.height) * heightPx,
      }),
    );
  };
  const { widthPx, heightPx } = natural();
  return (
    <div className="picture-spots">
      <img
        ref={image}
        src={props.url}
        alt="Still to be laid on the ground"
        draggable={false}
        onLoad={() => props.onSize(natural())}
      />
      {props.spots?.map((spot, index) => (
        <button
          key={index === 0 ? 'first' : 'second'}
          type="button"
          aria-label={`Mark ${index + 1}: ${Math.round(spot.x)} across, ${Math.round(spot.y)} down. Arrow keys move it.`}
          style={{ left: `${(spot.x / widthPx) * 100}%`, top: `${(spot.y / heightPx) * 100}%` }}
          onPointerDown={(event) => {
            held.current = index as 0 | 1;
            event.currentTarget.setPointerCapture(event.pointerId);
          }}
          onPointerMove={moved}
          onPointerUp={() => {
            held.current = null;
          }}
          onKeyDown={(event) => {
            const step = event.shiftKey ? 10 : 1;
            const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[
              event.key
            ];
            if (!way) return;
            event.preventDefault();
            props.onMove(index as 0 | 1, inside({ x: spot.x + way[0] * step, y: spot.y + way[1] * step }));
          }}
        >
          {index + 1}
        </button>
      ))}
    </div>
  );
}
