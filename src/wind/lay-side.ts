import { LANES } from './kernel/assembly/layout.ts';
import { alongWind, type ShelterTile, type WindRay } from './shelter-tile.ts';

/**
 * Beside a belt that the wind blows along, reductions persist to about four heights (Cleugh 1997; Burke 1998, as an
 * extension page gives them). How large they are is not published.
 */
const BESIDE_H = 4;
/** Our guess: right beside the belt half of what the belt takes at its own line from a wind that meets it square. */
const BESIDE_SHARE = 0.5;
/** From this cosine to the normal on (75.5 degrees) the wind counts as blowing along; in full where it is parallel. */
const ALONG_FROM_COSINE = 0.25;

/** Share of a wind's side shelter at a cosine between the wind and the normal of a belt: 1 along it, 0 from 75.5 degrees. */
export const besideStrength = (cosine: number): number =>
  BESIDE_SHARE * Math.max(0, 1 - cosine / ALONG_FROM_COSINE);

/**
 * Raises the deficits beside one straight piece that the wind blows along: from `deficits` at the line, falling linearly
 * to nothing four heights to either side, from its windward end to its leeward end (our guess).
 * @param heightM at its two ends; @param deficits at the line, by lane.
 * @param out deficits of the tile from `at` on, one float for each lane of a cell. Mutates `out`.
 */
export function laySide(
  tile: ShelterTile,
  ray: WindRay,
  xyM: Float64Array,
  heightM: Float64Array,
  deficits: readonly number[],
  out: Float32Array,
  at: number,
): void {
  const [x1, y1, x2, y2] = xyM;
  const lengthM = Math.hypot(x2 - x1, y2 - y1);
  const greatestM = BESIDE_H * Math.max(heightM[0], heightM[1]);
  const [ux, uy] = [(x2 - x1) / lengthM, (y2 - y1) / lengthM];
  const top = tile.rowYM[0];
  const firstRow = Math.max(0, Math.floor((top - Math.max(y1, y2) - greatestM) / tile.cellM));
  const lastRow = Math.min(tile.rows - 1, Math.ceil((top - Math.min(y1, y2) + greatestM) / tile.cellM));
  const column = (x: number) => (x - tile.firstXM) / tile.cellM;
  const firstColumn = Math.max(0, Math.floor(column(Math.min(x1, x2) - greatestM)));
  const lastColumn = Math.min(tile.columns - 1, Math.ceil(column(Math.max(x1, x2) + greatestM)));
  const [t1, t2] = [alongWind(ray, x1, y1), alongWind(ray, x2, y2)];
  const [from, to] = [Math.min(t1, t2), Math.max(t1, t2)];
  for (let row = firstRow; row <= lastRow; row++) {
    const y = tile.rowYM[row];
    for (let c = firstColumn; c <= lastColumn; c++) {
      const x = tile.firstXM + c * tile.cellM;
      const q = ((x - x1) * ux + (y - y1) * uy) / lengthM;
      const t = alongWind(ray, x, y);
      if (q < 0 || q > 1 || t < from || t > to) continue;
      const asideM = Math.abs((x - x1) * uy - (y - y1) * ux);
      const share = 1 - asideM / (BESIDE_H * (heightM[0] + q * (heightM[1] - heightM[0])));
      if (!(share > 0)) continue;
      const cell = at + (row * tile.columns + c) * LANES;
      for (let lane = 0; lane < LANES; lane++) {
        const value = deficits[lane] * share;
        if (value > out[cell + lane]) out[cell + lane] = value;
      }
    }
  }
}
