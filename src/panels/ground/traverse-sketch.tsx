import type { LonLat } from '../../geo/frame.ts';

const SIZE = 160;
const MARGIN = 12;

/** The boundary as it comes out, north up, so that a slip in a bearing is seen at once. */
export function TraverseSketch(props: { ring: readonly LonLat[] }) {
  const { ring } = props;
  const stretch = Math.cos((ring[0][1] * Math.PI) / 180);
  const points = ring.map(([lon, lat]) => [lon * stretch, lat] as const);
  const west = Math.min(...points.map(([x]) => x));
  const north = Math.max(...points.map(([, y]) => y));
  const width = Math.max(...points.map(([x]) => x)) - west;
  const height = north - Math.min(...points.map(([, y]) => y));
  const scale = (SIZE - 2 * MARGIN) / Math.max(width, height, 1e-12);
  const path = points
    .map(
      ([x, y], i) =>
        `${i === 0 ? 'M' : 'L'}${(MARGIN + (x - west) * scale).toFixed(1)},${(MARGIN + (north - y) * scale).toFixed(1)}`,
    )
    .join(' ');
  return (
    <svg className="sketch" viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label="The boundary, north up">
      <path d={path} fill="var(--leaf-wash)" stroke="var(--ink)" strokeWidth="1.5" strokeDasharray="6 3" />
      <circle
        cx={MARGIN + (points[0][0] - west) * scale}
        cy={MARGIN + (north - points[0][1]) * scale}
        r="4"
        fill="var(--ink)"
      />
    </svg>
  );
}
