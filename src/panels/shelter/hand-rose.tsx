import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react';
import { onCircle, wedge } from '../../sheets/rose-shape.ts';
import { RoseLetters } from './wind-rose.tsx';
import './hand-rose.css';

const REACH = 112;
const HALF_DEG = 11.25;
const POINTS = 16;
/** A petal of nothing still shows where to pull. */
const STUB = 5;

export interface HandPetal {
  /** "south-west". */
  readonly name: string;
  readonly value: number;
  /** The value as it is said: "18 % of the hours". */
  readonly spoken: string;
}

/** What is pulled: its rings, its steps and its words. Values are from 0 to the rim. */
export interface HandScale {
  readonly rings: readonly { readonly value: number; readonly words: string }[];
  readonly step: number;
  readonly least: number;
}

/**
 * A rose whose sixteen petals are pulled longer or shorter: by a pointer or finger anywhere in a direction, or by keys,
 * up and down for its length, left and right for the next direction. Each petal is a slider.
 */
export function HandRose(props: {
  readonly legend: ReactNode;
  readonly petals: readonly HandPetal[];
  readonly scale: HandScale;
  readonly current: number;
  readonly broad: boolean;
  readonly describedBy: string;
  readonly onCurrent: (point: number) => void;
  readonly onPull: (point: number, value: number) => void;
  /** The pull is over: one edit. */
  readonly onDone: (point: number) => void;
}) {
  const { petals, scale, current, broad, onCurrent, onPull, onDone } = props;
  const svg = useRef<SVGSVGElement>(null);
  const held = useRef<number | null>(null);
  const keyed = useRef(false);
  const rim = scale.rings[scale.rings.length - 1].value;
  const clamped = (value: number) => Math.min(rim, Math.max(scale.least, value));

  const polar = (event: PointerEvent) => {
    const box = svg.current?.getBoundingClientRect();
    if (!box) return { deg: 0, length: 0 };
    const x = event.clientX - box.left - box.width / 2;
    const y = event.clientY - box.top - box.height / 2;
    const unit = (2 * (REACH + 26)) / box.width;
    return { deg: (Math.atan2(x, -y) * 180) / Math.PI, length: Math.hypot(x, y) * unit };
  };
  const pull = (event: PointerEvent, point: number) => {
    const steps = Math.round(((polar(event).length / REACH) * rim) / scale.step);
    onPull(point, clamped(steps * scale.step));
  };
  const press = (event: PointerEvent) => {
    if (event.button !== 0) return;
    event.preventDefault();
    const { deg, length } = polar(event);
    if (length > REACH + 14) return;
    const point = (Math.round(deg / (2 * HALF_DEG)) + POINTS) % POINTS;
    held.current = point;
    svg.current?.setPointerCapture(event.pointerId);
    focusOn(point);
    pull(event, point);
  };
  const release = () => {
    if (held.current === null) return;
    onDone(held.current);
    held.current = null;
  };
  const focusOn = (point: number) => {
    onCurrent(point);
    svg.current?.querySelectorAll<SVGGElement>('[role="slider"]')[point]?.focus();
  };
  const keys = (event: KeyboardEvent, point: number) => {
    const { value } = petals[point];
    const to: Record<string, number> = {
      ArrowUp: value + scale.step,
      ArrowDown: value - scale.step,
      PageUp: value + 5 * scale.step,
      PageDown: value - 5 * scale.step,
      Home: scale.least,
      End: rim,
    };
    if (event.key in to) {
      event.preventDefault();
      keyed.current = true;
      onPull(point, clamped(to[event.key]));
    } else if (event.key === 'ArrowLeft' || event.key === 'ArrowRight') {
      event.preventDefault();
      finishKeys();
      focusOn((point + (event.key === 'ArrowRight' ? 1 : POINTS - 1)) % POINTS);
    }
  };
  const finishKeys = () => {
    if (!keyed.current) return;
    keyed.current = false;
    onDone(current);
  };

  const box = REACH + 26;
  return (
    <fieldset>
      <legend>{props.legend}</legend>
      <svg
        ref={svg}
        className="hand-rose"
        viewBox={`${-box} ${-box} ${2 * box} ${2 * box}`}
        onPointerDown={press}
        onPointerMove={(event) => {
          if (held.current !== null) pull(event, held.current);
        }}
        onPointerUp={release}
        onPointerCancel={release}
      >
        <title>Pull a direction longer or shorter</title>
        <circle className="ground" r={REACH + 14} />
        {scale.rings.map(({ value }) => (
          <circle key={value} className="ring" r={(value / rim) * REACH} />
        ))}
        {petals.map(({ name, value, spoken }, point) => {
          const length = Math.max(STUB, Math.min(1, value / rim) * REACH);
          const shape = wedge(point * 2 * HALF_DEG, HALF_DEG * (broad ? 0.8 : 0.42), 0, length);
          const [x, y] = onCircle(point * 2 * HALF_DEG, length);
          return (
            <g
              key={name}
              role="slider"
              tabIndex={point === current ? 0 : -1}
              className={point === current ? 'pulled current' : 'pulled'}
              aria-label={name}
              aria-orientation="vertical"
              aria-valuemin={scale.least}
              aria-valuemax={rim}
              aria-valuenow={value}
              aria-valuetext={spoken}
              aria-describedby={props.describedBy}
              onFocus={() => onCurrent(point)}
              onKeyDown={(event) => keys(event, point)}
              onKeyUp={finishKeys}
              onBlur={finishKeys}
            >
              <path d={`M${shape.map(([px, py]) => `${px.toFixed(2)},${py.toFixed(2)}`).join('L')}Z`} />
              <circle className="tip" cx={x} cy={y} r={point === current ? 6 : 2.4} />
            </g>
          );
        })}
        <RoseLetters reach={REACH + 2} />
        {scale.rings.map(({ value, words }) => {
          const [x, y] = onCircle(HALF_DEG, (value / rim) * REACH);
          return (
            <text key={value} className="ring-words" x={x + 1} y={y - 2}>
              {words}
            </text>
          );
        })}
      </svg>
    </fieldset>
  );
}
