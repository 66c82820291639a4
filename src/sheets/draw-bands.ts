import { trueCrossings } from '../numeric/level-lines.ts';
import { bandInks, hatchMarks } from './band-inks.ts';
import { bandRegions } from './band-regions.ts';
import { cellsOnPaper, partOnPage } from './grid-on-paper.ts';
import { INK } from './inks.ts';
import type { MapPlacement } from './map-placement.ts';
import type { Mark, PointMm } from './page-model.ts';
import type { BandMap, PlanPageInput } from './plan-input.ts';

/** Islands and holes smaller than this on paper are specks, not bands. */
const SMALLEST_RING_MM2 = 0.6;

function areaMm2(ring: readonly PointMm[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) {
    const [px, py] = ring[i];
    const [qx, qy] = ring[(i + 1) % ring.length];
    sum += px * qy - qx * py;
  }
  return Math.abs(sum) / 2;
}

/** The bands as tinted and hatched areas with thin ink lines between. */
export function drawBands(bandMap: BandMap, input: PlanPageInput, placement: MapPlacement): Mark[] {
  const grid = partOnPage(bandMap.grid, input, placement);
  if (!grid) return [];
  const onPaper = cellsOnPaper(grid, input, placement);
  const inks = bandInks(bandMap.bands, input.inking);
  const regions = bandRegions(grid, bandMap.bands)
    .map((region) => ({
      ...region,
      rings: region.rings.filter((ring) => areaMm2(ring.map(onPaper)) >= SMALLEST_RING_MM2),
    }))
    .filter((region) => region.rings.length > 0);
  const areas = regions.map((region) => region.rings.map((ring) => ring.map(onPaper)));
  const marks: Mark[] = [];
  regions.forEach((region, i) => {
    marks.push({ mark: 'polygon', ringsMm: areas[i], fill: inks[region.band].tint });
  });
  regions.forEach((region, i) => {
    // A band proper is its region less the next higher one: even-odd of both.
    marks.push(...hatchMarks([...areas[i], ...(areas[i + 1] ?? [])], inks[region.band]));
    if (i === 0) return;
    marks.push({
      mark: 'lines',
      linesMm: region.rings
        .flatMap((ring) => trueCrossings(ring, grid, grid.values))
        .map((line) => line.map(onPaper)),
      stroke: { ink: INK, widthMm: 0.15 },
    });
  });
  return marks;
}
