import { CARE_YEARS, type CareEffect } from '../../state/care.ts';
import { lengthFrom, lengthIn, lengthUnit } from '../../state/format-measure.ts';
import { useApp } from '../../state/store.ts';

const WIDTH = 300;
const HEIGHT = 150;
const LEFT = 40;
const RIGHT = 8;
const TOP = 20;
const BASE = 122;

type Heights = readonly (number | null)[];

/** Height of a plant by year: with its care, from slow to fast growth, and without any, dashed. */
export function CareCurve({ effect, year }: { readonly effect: CareEffect; readonly year: number }) {
  const units = useApp((app) => app.unitSystem);
  const { cared, uncared } = effect;
  const tallestM = Math.max(1, ...[...cared.fast, ...uncared.usual].map((heightM) => heightM ?? 0));
  const step = stepFor(lengthIn(tallestM, units));
  const most = step * Math.ceil(lengthIn(tallestM, units) / step);
  const x = (at: number) => LEFT + (at / CARE_YEARS) * (WIDTH - LEFT - RIGHT);
  const y = (heightM: number) => BASE - (lengthIn(heightM, units) / most) * (BASE - TOP);
  const point = (at: number, heightM: number) => `${x(at).toFixed(1)},${y(heightM).toFixed(1)}`;
  const line = (heights: Heights) =>
    stretches(heights)
      .map((years) => years.map((at, i) => `${i === 0 ? 'M' : 'L'}${point(at, heights[at] ?? 0)}`).join(' '))
      .join(' ');
  const band = stretches(cared.usual)
    .map((years) => {
      const there = (heights: Heights) =>
        years.flatMap((at) => (heights[at] === null ? [] : [point(at, heights[at])]));
      return `M${[...there(cared.fast), ...there(cared.slow).reverse()].join(' L')} Z`;
    })
    .join(' ');
  return (
    <svg className="care-curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {Array.from({ length: Math.round(most / step) + 1 }, (_, i) => i * step).map((value) => (
        <g key={value}>
          <line
            className="rule"
            x1={LEFT}
            x2={WIDTH - RIGHT}
            y1={y(lengthFrom(value, units))}
            y2={y(lengthFrom(value, units))}
          />
          <text x={LEFT - 6} y={y(lengthFrom(value, units)) + 4} textAnchor="end">
            {value}
          </text>
        </g>
      ))}
      <text x={LEFT - 6} y={TOP - 8} textAnchor="end">
        {lengthUnit(units)}
      </text>
      {year <= CARE_YEARS ? <line className="shown" x1={x(year)} x2={x(year)} y1={TOP} y2={BASE} /> : null}
      <path className="uncared" d={line(uncared.usual)} />
      <path className="wash" d={band} />
      <path className="cared" d={line(cared.usual)} />
      {[0, 10, 20, 30, 40].map((at) => (
        <text key={at} x={x(at)} y={BASE + 16} textAnchor="middle">
          {at}
        </text>
      ))}
    </svg>
  );
}

/** Years that follow one another in which it stands. */
function stretches(heights: Heights): number[][] {
  const found: number[][] = [];
  for (let at = 0; at < heights.length; at++) {
    if (heights[at] === null) continue;
    if (at === 0 || heights[at - 1] === null) found.push([]);
    found[found.length - 1].push(at);
  }
  return found;
}

/** Rules at round figures, some three to six of them. */
const stepFor = (most: number): number => [0.5, 1, 2, 5, 10, 20].find((step) => most / step <= 5) ?? 50;
