import { cutWords } from '../../sheets/wind-here-words.ts';
import { formatSpeed } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import { fineDirectionWord } from '../../units/compass.ts';

/** One direction of a season: how much wind comes from there in the open, and the share of it that is left here. */
export interface RoseRay {
  readonly fromDeg: number;
  readonly frequency: number;
  readonly openSpeedMps: number;
  readonly share: number;
}
const REACH = 96;
/** Directions that stand alone are drawn this wide to either side, degrees. */
const LONE_HALF_DEG = 5;
const EVEN = [8, 12, 16, 36];

/** Two outlines in ink: the open wind (how often times how strong), and what is left of it here. */
export function WindHereRose(props: {
  readonly rays: readonly RoseRay[];
  readonly caption: string;
  readonly units: UnitSystem;
}) {
  const { rays, caption, units } = props;
  const blowing = rays.filter(({ frequency, openSpeedMps }) => frequency * openSpeedMps > 0);
  const most = Math.max(...blowing.map(({ frequency, openSpeedMps }) => frequency * openSpeedMps), 1e-9);
  // Faster air beside an end must still fit.
  const widest = Math.max(1, ...blowing.map(({ share }) => share));
  const even = EVEN.includes(rays.length);
  const half = even ? 180 / rays.length : LONE_HALF_DEG;
  const length = (ray: RoseRay, share: number) =>
    ray.frequency * ray.openSpeedMps > 0
      ? ((ray.frequency * ray.openSpeedMps * share) / most / widest) * REACH
      : 0;
  const outline = (lengthOf: (ray: RoseRay) => number) =>
    even
      ? `M${rays.map((ray) => arc(ray.fromDeg, half, lengthOf(ray))).join(' L')} Z`
      : blowing.map((ray) => petal(ray.fromDeg, half, lengthOf(ray))).join(' ');
  const lead = blowing.toSorted((a, b) => b.frequency * b.openSpeedMps - a.frequency * a.openSpeedMps)[0];
  const spoken = lead
    ? `${caption}: most wind comes from the ${fineDirectionWord(lead.fromDeg)}, ${formatSpeed(lead.openSpeedMps, units)} in the open, ${cutWords(lead.share)} here.`
    : caption;
  return (
    <figure className="wind-here-rose">
      <svg viewBox="-126 -120 252 240" role="img" aria-label={spoken}>
        <circle className="rim" r={REACH} />
        <path className="cross" d={`M0,${-REACH} V${REACH} M${-REACH},0 H${REACH}`} />
        <path className="left" d={outline((ray) => length(ray, ray.share))} />
        <path className="open" d={outline((ray) => length(ray, 1))} />
        {blowing.map((ray) => (
          <path key={ray.fromDeg} className="told" d={petal(ray.fromDeg, half, length(ray, 1))}>
            <title>
              {`${fineDirectionWord(ray.fromDeg)}: ${formatSpeed(ray.openSpeedMps, units)} in the open, ${cutWords(ray.share)} here`}
            </title>
          </path>
        ))}
        <circle r="2.5" className="spot" />
        <text x="0" y={-REACH - 8} textAnchor="middle" className="north">
          N
        </text>
        <text x={REACH + 7} y="5">
          E
        </text>
        <text x="0" y={REACH + 18} textAnchor="middle">
          S
        </text>
        <text x={-REACH - 7} y="5" textAnchor="end">
          W
        </text>
      </svg>
      <figcaption className="small soft">
        <span className="key">
          <svg viewBox="0 0 26 12" aria-hidden="true">
            <path className="open" d="M1,1 H25 V11 H1 Z" />
          </svg>
          open wind
        </span>
        <span className="key">
          <svg viewBox="0 0 26 12" aria-hidden="true">
            <path className="left" d="M1,1 H25 V11 H1 Z" />
          </svg>
          wind here
        </span>
        Each petal points to where the wind comes from; it is the longer, the oftener and the harder it blows.
      </figcaption>
    </figure>
  );
}

function arc(fromDeg: number, halfDeg: number, length: number): string {
  const at = (deg: number) => {
    const rad = (deg * Math.PI) / 180;
    return `${(Math.sin(rad) * length).toFixed(2)},${(-Math.cos(rad) * length).toFixed(2)}`;
  };
  const r = length.toFixed(2);
  return `${at(fromDeg - halfDeg)} A${r},${r} 0 0 1 ${at(fromDeg + halfDeg)}`;
}
const petal = (fromDeg: number, halfDeg: number, length: number): string =>
  `M0,0 L${arc(fromDeg, halfDeg, length)} Z`;
