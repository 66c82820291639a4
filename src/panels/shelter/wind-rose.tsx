import { onCircle, petalHalfDeg, petalParts, ROSE_CLASSES, roseRings } from '../../sheets/rose-shape.ts';
import { seasonSentence } from '../../sheets/wind-climate-words.ts';
import { formatShare, formatSpeed, speedUnit } from '../../state/format-measure.ts';
import type { UnitSystem } from '../../state/model.ts';
import type { SeasonFacts } from '../../state/site-wind.ts';
import { EIGHT_POINTS, fineDirectionWord } from '../../units/compass.ts';
import './wind-rose.css';

const REACH = 96;

/** Petals point to where the wind comes from; their length is how often, their breadth and ink how strong. */
export function WindRose(props: { season: SeasonFacts; caption: string; unitSystem: UnitSystem }) {
  const { season, caption, unitSystem } = props;
  const { sectors } = season;
  const rings = roseRings(sectors);
  const rim = rings[rings.length - 1];
  const half = petalHalfDeg(sectors.length);
  const said = seasonSentence(season, speedUnit(unitSystem) === 'mph' ? 'mph' : 'm/s');
  return (
    <figure className="rose-figure">
      <svg className="rose" viewBox="-124 -118 248 236" role="img" aria-label={`${caption}: ${said}`}>
        {rings.map((share) => (
          <circle key={share} className="ring" r={(share / rim) * REACH} />
        ))}
        {sectors.map((sector) => (
          <g key={sector.fromDeg}>
            {petalParts(sector, half, REACH / rim).map((ring, i) =>
              ring.length > 0 ? (
                <path
                  key={ROSE_CLASSES[i].fromForce}
                  className={`petal strength-${i}`}
                  d={`M${ring.map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`).join('L')}Z`}
                />
              ) : null,
            )}
            <title>
              {`${fineDirectionWord(sector.fromDeg)}: ${formatShare(sector.frequency)} of the hours, ${formatSpeed(sector.meanSpeedMps, unitSystem)}`}
            </title>
          </g>
        ))}
        <RoseLetters reach={REACH} />
        {rings.slice(-2).map((share) => {
          const [x, y] = onCircle(11.25, (share / rim) * REACH);
          return (
            <text key={share} className="ring-words" x={x + 1} y={y - 2}>
              {formatShare(share)}
            </text>
          );
        })}
      </svg>
      <figcaption className="small soft">
        <b>{caption}.</b> {said.replaceAll(' %', '\u00a0%')}
      </figcaption>
    </figure>
  );
}

/** The eight points of the compass around a rose. */
export function RoseLetters(props: { reach: number }) {
  return EIGHT_POINTS.map(({ short, azimuthDeg }) => {
    const [x, y] = onCircle(azimuthDeg, props.reach + 12);
    return (
      <text
        key={short}
        x={x}
        y={y + 5}
        textAnchor="middle"
        className={azimuthDeg === 0 ? 'north' : undefined}
      >
        {short}
      </text>
    );
  });
}

/** What breadth and ink of the petals mean. */
export function RoseKey() {
  return (
    <ul className="rose-key small soft">
      {ROSE_CLASSES.map(({ words, fromForce, breadth }, i) => (
        <li key={fromForce}>
          <svg viewBox="0 0 22 14" aria-hidden="true">
            <rect
              className={`petal strength-${i}`}
              x="1"
              width="20"
              y={7 - 6.5 * breadth}
              height={13 * breadth}
            />
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
