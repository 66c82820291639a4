import earcut from 'earcut';
import { counterClockwise, doubleArea, isConvex, type Ring } from './convex.ts';

/** Slivers below this area (m2) are dropped. */
const LEAST_AREA_M2 = 1e-4;

/** Joins two convex rings along the directed edge a-b of the first (b-a of the second). */
function joinAlong(first: number[], second: number[], a: number, b: number): number[] {
  const i = first.indexOf(b);
  const k = second.indexOf(a);
  const tail = [...first.slice(i), ...first.slice(0, i)]; // b … a
  const other = [...second.slice(k), ...second.slice(0, k)]; // a … b
  return [...tail.slice(0, -1), ...other.slice(0, -1)];
}

/**
 * A polygon with holes cut into convex pieces that do not overlap: triangles by ear cutting, then joined greedily
 * across shared edges while the result stays convex (after Hertel & Mehlhorn 1983).
 * @param rings outer ring first, local metres, first vertex not repeated.
 */
export function polygonPieces(rings: readonly Ring[]): Ring[] {
  const vertices = rings.flat();
  const holes: number[] = [];
  let offset = 0;
  for (const ring of rings.slice(0, -1)) {
    offset += ring.length;
    holes.push(offset);
  }
  const triangles = earcut(vertices.flat(), holes, 2);
  const ringOf = (piece: number[]): Ring => piece.map((i) => vertices[i]);
  const pieces: (number[] | null)[] = [];
  const ownerOfEdge = new Map<string, number>();
  const setEdges = (piece: number[], index: number) => {
    for (let i = 0; i < piece.length; i++)
      ownerOfEdge.set(`${piece[i]},${piece[(i + 1) % piece.length]}`, index);
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const piece = [triangles[i], triangles[i + 1], triangles[i + 2]];
    if (Math.abs(doubleArea(ringOf(piece))) < 2 * LEAST_AREA_M2) continue;
    if (doubleArea(ringOf(piece)) < 0) piece.reverse();
    pieces.push(piece);
    setEdges(piece, pieces.length - 1);
  }
  for (let index = 0; index < pieces.length; index++) {
    let piece = pieces[index];
    for (let i = 0; piece && i < piece.length; i++) {
      const a = piece[i];
      const b = piece[(i + 1) % piece.length];
      const neighbour = ownerOfEdge.get(`${b},${a}`);
      const other = neighbour === undefined || neighbour === index ? null : pieces[neighbour];
      if (!other) continue;
      const joined = joinAlong(piece, other, a, b);
      if (!isConvex(ringOf(joined))) continue;
      pieces[neighbour!] = null;
      pieces[index] = joined;
      piece = joined;
      setEdges(joined, index);
      i = -1;
    }
  }
  return pieces.flatMap((piece) => (piece ? [counterClockwise(ringOf(piece))] : []));
}
