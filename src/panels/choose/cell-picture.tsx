import { type CellPicture, cellShapes } from '../../choose/cell-pictures.ts';

const WIDTH = 36;
const HEIGHT = 14;
const points = (shape: readonly (readonly [number, number])[]) => shape.map((xy) => xy.join()).join(' ');

/** What stands beside it in figures, as a picture. */
export function CellPictureMark({ picture }: { readonly picture: CellPicture | null }) {
  const { filled, from } = picture ? cellShapes(picture, WIDTH, HEIGHT) : { filled: [], from: null };
  return (
    <svg className="cell-picture" viewBox={`-1 -1 ${WIDTH + 2} ${HEIGHT + 2}`} aria-hidden="true">
      {filled.map((shape) => (
        <polygon key={points(shape)} points={points(shape)} />
      ))}
      {from ? <polyline points={points(from)} /> : null}
    </svg>
  );
}
