import { useApp } from '../../state/store.ts';
import { curvePath } from './curve-path.ts';
import { enoughByYear } from './enough-by-year.ts';

const LAST_YEAR = 40;
const YEARS = Array.from({ length: LAST_YEAR + 1 }, (_, year) => year);
const WIDTH = 800;
const TOP = 6;
const BASE = 40;

/** Years after planting as a ruled diary: a rule a year, a stronger one every five, two quiet curves, the chosen year. */
export function Diary() {
  const year = useApp((app) => app.year);
  const baseYear = useApp((app) => app.document.site.baseYear);
  const outlook = useApp((app) => app.outlook);
  const shelterYears = useApp((app) => app.yearCurves);
  const show = useApp((app) => app.show);
  const x = (each: number) => (each / LAST_YEAR) * WIDTH;
  const light = enoughByYear(outlook.result ?? [], LAST_YEAR);
  const lee = shelterYears.result && shelterYears.result.years.length > 0 ? shelterYears.result : null;
  const box = { width: WIDTH, top: TOP, base: BASE, lastYear: LAST_YEAR };
  return (
    <div>
      <div className="caption">
        <span>Years after planting</span>
        <b>
          year {year} · {baseYear + year}
        </b>
        <span className="push" />
        {light ? <span className="key">patches with enough light</span> : null}
        {lee ? <span className="key lee">field in shelter</span> : null}
      </div>
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
          {light ? (
            <path
              d={curvePath(light.years, light.shares, box)}
              fill="none"
              stroke="var(--straw)"
              strokeWidth="2.5"
              opacity={outlook.stale ? 0.45 : 1}
              vectorEffect="non-scaling-stroke"
            />
          ) : null}
          {lee ? (
            <path
              d={curvePath(lee.years, lee.fieldShareInShelter, box)}
              fill="none"
              stroke="var(--water)"
              strokeWidth="2.5"
              strokeDasharray="6 3"
              opacity={shelterYears.stale ? 0.45 : 1}
              vectorEffect="non-scaling-stroke"
            />
          ) : null}
        </svg>
        <DiaryNumbers />
        <input
          type="range"
          min={0}
          max={LAST_YEAR}
          step={1}
          value={year}
          aria-label="Years after planting"
          aria-valuetext={`year ${year}, ${baseYear + year}`}
          onChange={(event) => show({ year: Number(event.target.value) })}
        />
      </div>
    </div>
  );
}

/** The figures under the rules stay undistorted whatever the width, so they are not part of the stretched drawing. */
function DiaryNumbers() {
  return (
    <svg aria-hidden="true">
      {YEARS.filter((each) => each % 5 === 0).map((each) => (
        <text key={each} x={`${(each / LAST_YEAR) * 100}%`} y="57" textAnchor="middle">
          {each}
        </text>
      ))}
    </svg>
  );
}
