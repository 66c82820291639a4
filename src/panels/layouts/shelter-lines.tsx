import type { LayoutComparison } from '../../layouts/comparison.ts';
import { layoutWords } from '../../layouts/layout-words.ts';

const WIDTH = 440;
const HEIGHT = 190;
const LEFT = 54;
const RIGHT = 10;
const TOP = 12;
const BASE = 156;
const LAST_YEAR = 40;
const SIDES = ['first', 'second'] as const;

/** Share of the field in shelter by year, of both: usual growth, and the band from slow to fast. */
export function ShelterLines({ comparison }: { readonly comparison: LayoutComparison }) {
  const { sides, wantedShare, fieldName } = comparison;
  const x = (year: number) => LEFT + (year / LAST_YEAR) * (WIDTH - LEFT - RIGHT);
  const y = (share: number) => BASE - share * (BASE - TOP);
  const points = (years: readonly number[], shares: readonly number[]) =>
    years.map((year, i) => `${x(year).toFixed(1)},${y(shares[i]).toFixed(1)}`);
  return (
    <figure className="shelter-lines">
      <figcaption>
        <b>{fieldName} in shelter</b>
        <span className="small soft">share of it with the wind cut by 30 % or more, by year</span>
        {sides.map(({ layout }, i) => (
          <span key={SIDES[i]} className="small">
            <svg width="30" height="12" aria-hidden="true" className={SIDES[i]}>
              <path className="line" d="M1 6h28" />
            </svg>
            {layoutWords(layout)}
          </span>
        ))}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line className="rule" x1={LEFT} x2={WIDTH - RIGHT} y1={y(share)} y2={y(share)} />
            <text x={LEFT - 6} y={y(share) + 4} textAnchor="end">
              {share * 100} %
            </text>
          </g>
        ))}
        <line className="wanted" x1={LEFT} x2={WIDTH - RIGHT} y1={y(wantedShare)} y2={y(wantedShare)} />
        {sides.map(({ years: { years, shelteredShare } }, i) => (
          <g key={SIDES[i]} className={SIDES[i]}>
            <path
              className="wash"
              d={`M${[...points(years, shelteredShare.fast), ...points(years, shelteredShare.slow).reverse()].join(' L')} Z`}
            />
            <path className="line" d={`M${points(years, shelteredShare.usual).join(' L')}`} />
          </g>
        ))}
        {[0, 10, 20, 30, 40].map((year) => (
          <text key={year} x={x(year)} y={BASE + 18} textAnchor="middle">
            {year}
          </text>
        ))}
      </svg>
    </figure>
  );
}
