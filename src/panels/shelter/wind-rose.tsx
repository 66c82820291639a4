import { formatShare, formatSpeed } from '../../state/format-measure.ts';
import { fineDirectionWord } from '../../state/format-words.ts';
import type { UnitSystem } from '../../state/model.ts';
import './wind-rose.css';

export interface RoseSector {
  readonly fromDeg: number;
  readonly frequency: number;
  readonly meanSpeedMps: number;
}
const REACH = 92;

/** Petals point to where the wind comes from; their length is how often, their weight of ink how strong. */
export function WindRose(props: {
  sectors: readonly RoseSector[];
  calmShare: number;
  caption: string;
  unitSystem: UnitSystem;
}) {
  const most = Math.max(0.05, ...props.sectors.map((sector) => sector.frequency));
  const ringStep = most > 0.3 ? 0.2 : most > 0.12 ? 0.1 : 0.05;
  const outer = Math.ceil(most / ringStep) * ringStep;
  const rings = Array.from({ length: Math.round(outer / ringStep) }, (_, i) => (i + 1) * ringStep);
  const half = Math.min(180 / props.sectors.length, 20) * 0.78;
  const strongest = Math.max(...props.sectors.map((sector) => sector.meanSpeedMps), 0.1);
  const lead = props.sectors.toSorted((a, b) => b.frequency - a.frequency)[0];
  const spoken = lead
    ? `${props.caption}: most often from the ${fineDirectionWord(lead.fromDeg)}, ${formatShare(lead.frequency)} of the hours at ${formatSpeed(lead.meanSpeedMps, props.unitSystem)}.`
    : props.caption;
  return (
    <figure>
      <svg className="rose" viewBox="-128 -122 256 244" role="img" aria-label={spoken}>
        {rings.map((share) => (
          <circle key={share} className="ring" r={(share / outer) * REACH} />
        ))}
        {props.sectors
          .filter((sector) => sector.frequency > 0)
          .map((sector) => (
            <path
              key={sector.fromDeg}
              className="petal"
              fillOpacity={0.25 + 0.75 * (sector.meanSpeedMps / strongest)}
              d={petal(sector.fromDeg, half, (sector.frequency / outer) * REACH)}
            >
              <title>
                {`${fineDirectionWord(sector.fromDeg)}: ${formatShare(sector.frequency)} of the hours, ${formatSpeed(sector.meanSpeedMps, props.unitSystem)}`}
              </title>
            </path>
          ))}
        <text x="0" y={-REACH - 10} textAnchor="middle" className="north">
          N
        </text>
        <text x={REACH + 9} y="5">
          E
        </text>
        <text x="0" y={REACH + 20} textAnchor="middle">
          S
        </text>
        <text x={-REACH - 9} y="5" textAnchor="end">
          W
        </text>
        <text x={REACH * 0.72} y={REACH * 0.86} textAnchor="start">
          {formatShare(outer)}
        </text>
      </svg>
      <figcaption className="small soft">
        {props.caption}. Petals point to where it comes from; longer is more often, darker is stronger. Calm{' '}
        {formatShare(props.calmShare)}.
      </figcaption>
    </figure>
  );
}

function petal(fromDeg: number, halfDeg: number, length: number): string {
  const at = (deg: number) => {
    const rad = (deg * Math.PI) / 180;
    return `${(Math.sin(rad) * length).toFixed(2)},${(-Math.cos(rad) * length).toFixed(2)}`;
  };
  return `M0,0 L${at(fromDeg - halfDeg)} A${length.toFixed(2)},${length.toFixed(2)} 0 0 1 ${at(fromDeg + halfDeg)} Z`;
}
