import { lengthIn, lengthUnit } from '../../state/format-measure.ts';
import type { ComparedReading, SpeciesGrowth } from '../../state/growth-here.ts';
import type { UnitSystem } from '../../state/model.ts';

const WIDTH = 320;
const HEIGHT = 216;
const LEFT = 32;
const RIGHT = 10;
const TOP = 22;
const BASE = 176;
const LAST = 40;

/** Steps of 1, 2 or 5 times a power of ten, four to eight of them up to a height. */
function ticksTo(top: number): number[] {
  const rough = top / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10);
  return Array.from({ length: Math.ceil(top / step) + 1 }, (_, i) => i * step);
}

/** Height over the years after planting: usual growth, its band from slow to fast, and what was read of it. */
export function HeightChart(props: {
  readonly growth: SpeciesGrowth;
  readonly readings: readonly ComparedReading[];
  readonly units: UnitSystem;
}) {
  const { growth, readings, units } = props;
  const { sizes } = growth;
  const tallestM = Math.max(
    ...sizes.map(({ heightM }) => heightM.fast),
    ...readings.map(({ reading }) => reading.heightM),
  );
  const ticks = ticksTo(lengthIn(tallestM, units));
  const top = ticks[ticks.length - 1];
  const x = (seasons: number) => LEFT + (seasons / LAST) * (WIDTH - LEFT - RIGHT);
  const y = (heightM: number) => BASE - (lengthIn(heightM, units) / top) * (BASE - TOP);
  const line = (pace: 'slow' | 'usual' | 'fast', order = sizes) =>
    order.map((size) => `${x(size.seasons).toFixed(1)},${y(size.heightM[pace]).toFixed(1)}`).join(' L');
  const drawn = readings.filter(({ onCurve }) => onCurve >= 0 && onCurve <= LAST);
  const end = sizes[sizes.length - 1];
  return (
    <svg className="height-chart" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      {ticks.map((tick) => {
        const at = BASE - (tick / top) * (BASE - TOP);
        return (
          <g key={tick}>
            <line className="rule" x1={LEFT} x2={WIDTH - RIGHT} y1={at} y2={at} />
            <text x={LEFT - 6} y={at + 4} textAnchor="end">
              {Number(tick.toFixed(1))}
            </text>
          </g>
        );
      })}
      <text x={LEFT - 6} y={TOP - 9} textAnchor="end">
        {lengthUnit(units)}
      </text>
      <path className="wash" d={`M${line('fast')} L${line('slow', [...sizes].reverse())} Z`} />
      <path className="line" d={`M${line('usual')}`} />
      {(['fast', 'slow'] as const).map((pace) => (
        <text
          key={pace}
          className="pace"
          x={x(LAST) - 2}
          y={y(end.heightM[pace]) + (pace === 'fast' ? -5 : 14)}
          textAnchor="end"
        >
          {pace}
        </text>
      ))}
      {drawn.map(({ of, reading, onCurve }) => (
        <circle
          key={`${of} ${reading.measure} ${reading.position}`}
          className="reading"
          cx={x(onCurve)}
          cy={y(reading.heightM)}
          r={4}
        />
      ))}
      {[0, 5, 10, 20, 30, 40].map((seasons) => (
        <text key={seasons} x={x(seasons)} y={BASE + 18} textAnchor="middle">
          {seasons}
        </text>
      ))}
      <text x={x(LAST / 2)} y={BASE + 36} textAnchor="middle">
        years after planting
      </text>
    </svg>
  );
}
