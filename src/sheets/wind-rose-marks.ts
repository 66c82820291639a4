import { EIGHT_POINTS } from '../units/compass.ts';
import { INK, RULE, SOFT_INK } from './inks.ts';
import type { Mark, PointMm } from './page-model.ts';
import { onCircle, petalHalfDeg, petalParts, ROSE_CLASSES, roseRings } from './rose-shape.ts';
import type { WindPageSeason } from './wind-page-input.ts';

const TEXT_MM = 2.7;

/** An inked rose about a middle: rings in percent of the hours, petals where the wind comes from. */
export function roseMarks(
  { sectors, calmShare }: WindPageSeason,
  [cx, cy]: PointMm,
  radiusMm: number,
  rings = roseRings(sectors),
): Mark[] {
  const rim = rings[rings.length - 1];
  const at = ([x, y]: PointMm): PointMm => [cx + x, cy + y];
  const marks: Mark[] = rings.map((share) => ({
    mark: 'circle',
    centreMm: [cx, cy],
    radiusMm: (share / rim) * radiusMm,
    stroke: { ink: RULE, widthMm: share === rim ? 0.25 : 0.12 },
  }));
  const half = petalHalfDeg(sectors.length);
  for (const sector of sectors)
    petalParts(sector, half, radiusMm / rim).forEach((ring, i) => {
      if (ring.length === 0) return;
      marks.push({
        mark: 'polygon',
        ringsMm: [ring.map(at)],
        fill: ROSE_CLASSES[i].tint,
        stroke: { ink: INK, widthMm: 0.18 },
      });
    });
  EIGHT_POINTS.forEach(({ short, azimuthDeg }, i) => {
    const [x, y] = at(onCircle(azimuthDeg, radiusMm + 3));
    marks.push({
      mark: 'text',
      atMm: [x, y + TEXT_MM * 0.36],
      text: short,
      sizeMm: i % 2 === 0 ? TEXT_MM * 1.15 : TEXT_MM * 0.9,
      ink: i === 0 ? INK : SOFT_INK,
      bold: i === 0,
      anchor: 'middle',
    });
  });
  // Between two points, where no petal of eight or sixteen has its middle.
  for (const share of rings) {
    const [x, y] = at(onCircle(11.25, (share / rim) * radiusMm));
    marks.push({
      mark: 'text',
      atMm: [x + 0.4, y - 0.4],
      text: `${Math.round(share * 100)} %`,
      sizeMm: 2.2,
      ink: SOFT_INK,
      haloMm: 0.4,
    });
  }
  marks.push({
    mark: 'text',
    atMm: [cx, cy + radiusMm + 8.6],
    text: `calm ${Math.round(calmShare * 100)} %`,
    sizeMm: 2.5,
    ink: SOFT_INK,
    anchor: 'middle',
  });
  return marks;
}
