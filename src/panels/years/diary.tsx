import { LAST_SHOWN_YEAR } from '../../state/play-years.ts';
import { useApp } from '../../state/store.ts';
import { curvePath } from './curve-path.ts';
import { yearCurves } from './year-curves.ts';
import { YearNumbers } from './year-numbers.tsx';
import { YearRange } from './year-range.tsx';

const YEARS = Array.from({ length: LAST_SHOWN_YEAR + 1 }, (_, year) => year);
const WIDTH = 800;
const TOP = 6;
const BASE = 40;

/** Years after planting as a ruled diary: a rule a year, a stronger one every five, two quiet curves, the chosen year. */
export function Diary() {
  const patches = useApp((app) => app.outlook.result);
  const yearsLook = useApp((app) => app.yearsLook);
  const x = (each: number) => (each / LAST_SHOWN_YEAR) * WIDTH;
  const curves = yearCurves(yearsLook.result, patches).filter(({ years }) => years.length > 0);
  const drawn = (id: 'light' | 'shelter') => {
    const curve = curves.find((each) => each.id === id);
    return curve ? (
      <path
        className={id}
        d={curvePath(curve.years, curve.shares, {
          width: WIDTH,
          top: TOP,
          base: BASE,
          lastYear: LAST_SHOWN_YEAR,
        })}
        opacity={yearsLook.stale ? 0.45 : 1}
        vectorEffect="non-scaling-stroke"
      />
    ) : null;
  };
  return (
    <div className="diary-side">
      <div className="diary">
        <svg viewBox={`0 0 ${WIDTH} 62`} preserveAspectRatio="none" aria-hidden="true">
          {YEARS.map((each) => (
            <line
              key={each}
              className="rule"
              x1={x(each)}
              x2={x(each)}
              y1={each % 5 === 0 ? TOP : BASE - 7}
              y2={BASE}
              vectorEffect="non-scaling-stroke"
            />
          ))}
          <line className="base" x1="0" x2={WIDTH} y1={BASE} y2={BASE} vectorEffect="non-scaling-stroke" />
          {drawn('light')}
          {drawn('shelter')}
        </svg>
        <YearNumbers />
        <YearRange />
      </div>
      <p className="keys">
        {curves.some(({ id }) => id === 'light') ? (
          <span className="key">patches with enough light</span>
        ) : null}
        {curves.some(({ id }) => id === 'shelter') ? <span className="key lee">field in shelter</span> : null}
      </p>
    </div>
  );
}
