import type { BeltWhen } from '../../belts/years-to-protect.ts';

const WIDTH = 300;
const HEIGHT = 132;
const LEFT = 34;
const RIGHT = 8;
const TOP = 10;
const BASE = 104;
const LAST_YEAR = 40;

/** Share of the field that a belt protects, by year: usual growth, the band from slow to fast, and the useful years. */
export function YearCurve({ when }: { readonly when: BeltWhen }) {
  const { years, protectedShare, usefulFrom } = when;
  const x = (year: number) => LEFT + (Math.min(year, LAST_YEAR) / LAST_YEAR) * (WIDTH - LEFT - RIGHT);
  const y = (share: number) => BASE - share * (BASE - TOP);
  // The first year beyond the sheet carries the line to its edge.
  const beyond = years.findIndex((year) => year >= LAST_YEAR);
  const shown = beyond < 0 ? years : years.slice(0, beyond + 1);
  const path = (shares: readonly number[]) =>
    shown
      .map((year, i) => `${i === 0 ? 'M' : 'L'}${x(year).toFixed(1)},${y(shares[i]).toFixed(1)}`)
      .join(' ');
  const back = shown
    .map((year, i) => `L${x(year).toFixed(1)},${y(protectedShare.slow[i]).toFixed(1)}`)
    .reverse()
    .join(' ');
  return (
    <svg className="year-curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {usefulFrom.fast !== null && usefulFrom.slow !== null ? (
        <rect
          className="useful"
          x={x(usefulFrom.fast)}
          width={Math.max(1.5, x(usefulFrom.slow) - x(usefulFrom.fast))}
          y={TOP}
          height={BASE - TOP}
        />
      ) : null}
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <line className="rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(share)} y2={y(share)} />
          <text x={LEFT - 6} y={y(share) + 4} textAnchor="end">
            {share * 100}
          </text>
        </g>
      ))}
      <path className="wash" d={`${path(protectedShare.fast)} ${back} Z`} />
      <path className="line" d={path(protectedShare.usual)} />
      {[0, 10, 20, 30, 40].map((year) => (
        <text key={year} x={x(year)} y={BASE + 16} textAnchor="middle">
          {year}
        </text>
      ))}
    </svg>
  );
}
