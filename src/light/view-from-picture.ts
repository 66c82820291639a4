/**
 * What stands before the sky as seen from a spot: a raster of what the foliage lets through, and the outline of each
 * thing with the mean of what it alone lets through.
 */
import { degToRad, radToDeg } from '../units/angle.ts';
import type { LandInView } from './view-from-land.ts';
import { mergedIntervals, outlineRings } from './view-from-outlines.ts';
import { type SeenPiece, type Span, turnBetween } from './view-from-pieces.ts';
import type { ThingOutline } from './view-from-types.ts';

/** The strip's cells: columns from north clockwise, rows from the zenith down. */
export interface ViewCells {
  readonly stepDeg: number;
  readonly columns: number;
  readonly rows: number;
  readonly convergenceRad: number;
}

export interface ViewPicture {
  readonly letThrough: Float32Array;
  readonly outlines: ThingOutline[];
}

/** A span is in sight from this altitude on, degrees; what is lower hides behind land or a wall. */
interface InSight {
  readonly piece: SeenPiece;
  readonly lowDeg: number;
  readonly highDeg: number;
}

const columnCentreDeg = (cells: ViewCells, column: number): number => (column + 0.5) * cells.stepDeg;

const gridAzimuthOf = (cells: ViewCells, trueDeg: number): number => degToRad(trueDeg) - cells.convergenceRad;

export const gridAzimuthsOf = (cells: ViewCells): Float64Array =>
  Float64Array.from({ length: cells.columns }, (_, column) =>
    gridAzimuthOf(cells, columnCentreDeg(cells, column)),
  );

/** For each column the pieces that may be met in it or beside it. */
export function piecesByColumn(cells: ViewCells, pieces: readonly SeenPiece[]): SeenPiece[][] {
  const marginRad = degToRad(cells.stepDeg);
  return Array.from(gridAzimuthsOf(cells), (azimuth) =>
    pieces.filter(
      (piece) => Math.abs(turnBetween(piece.azimuthRad, azimuth)) <= piece.halfWidthRad + marginRad,
    ),
  );
}

/** @param leafShare by leaf class, on the day that is drawn */
export function* viewPicture(
  cells: ViewCells,
  pieces: readonly SeenPiece[],
  byColumn: readonly SeenPiece[][],
  land: LandInView,
  leafShare: Float32Array,
): Generator<number, ViewPicture, void> {
  const { columns, rows, stepDeg } = cells;
  const letThrough = new Float32Array(columns * rows).fill(1);
  const faceSum = new Map<number, number>();
  const faceWeight = new Map<number, number>();
  const total = new Float64Array(rows);
  const own = new Float64Array(rows);
  for (let column = 0; column < columns; column++) {
    total.fill(0);
    const azimuth = gridAzimuthOf(cells, columnCentreDeg(cells, column));
    const here = inSight(byColumn[column], azimuth, column).filter(({ piece }) => !piece.solid);
    for (const thing of new Set(here.map(({ piece }) => piece.thing))) {
      own.fill(0);
      for (const { piece, lowDeg, highDeg } of here) {
        if (piece.thing !== thing) continue;
        const share = leafShare[piece.leafClass];
        const depthPerM = share * piece.depthOn + (1 - share) * piece.depthOff;
        const last = Math.min(rows - 1, Math.ceil(rows - lowDeg / stepDeg - 0.5));
        for (let row = Math.max(0, Math.floor(rows - highDeg / stepDeg - 0.5)); row <= last; row++) {
          const altitudeDeg = (rows - row - 0.5) * stepDeg;
          if (altitudeDeg < lowDeg || altitudeDeg > highDeg) continue;
          const altitude = degToRad(altitudeDeg);
          const cos = Math.cos(altitude);
          own[row] +=
            depthPerM * piece.pathM(Math.sin(azimuth) * cos, Math.cos(azimuth) * cos, Math.sin(altitude));
        }
      }
      let sum = 0;
      let weight = 0;
      for (let row = 0; row < rows; row++) {
        if (own[row] === 0) continue;
        total[row] += own[row];
        const solidAngle = Math.cos(degToRad((rows - row - 0.5) * stepDeg));
        sum += solidAngle * Math.exp(-own[row]);
        weight += solidAngle;
      }
      faceSum.set(thing, (faceSum.get(thing) ?? 0) + sum);
      faceWeight.set(thing, (faceWeight.get(thing) ?? 0) + weight);
    }
    for (let row = 0; row < rows; row++)
      if (total[row] > 0) letThrough[row * columns + column] = Math.exp(-total[row]);
    if (column % 24 === 0) yield (0.5 * column) / columns;
  }

  const outlines: ThingOutline[] = [];
  const things = new Map<number, SeenPiece[]>();
  for (const piece of pieces) things.set(piece.thing, [...(things.get(piece.thing) ?? []), piece]);
  let done = 0;
  for (const [thing, parts] of things) {
    const outline = outlineOf(thing, parts);
    if (outline) outlines.push(outline);
    yield 0.5 + (0.5 * ++done) / things.size;
  }
  outlines.sort((a, b) => a.nearestM - b.nearestM);
  return { letThrough, outlines };

  /** What of the pieces is in sight in a cut; solids hide what begins behind them, up to their tops, as land does. */
  function inSight(candidates: readonly SeenPiece[], gridAzimuthRad: number, column: number): InSight[] {
    const met: { piece: SeenPiece; span: Span }[] = [];
    for (const piece of candidates) {
      const span = piece.span(gridAzimuthRad);
      if (span) met.push({ piece, span });
    }
    return met.flatMap(({ piece, span }) => {
      let hiddenRad = Math.atan(land.before(column, span.fromM));
      for (const other of met)
        if (other.piece.solid && other.piece.thing !== piece.thing && other.span.fromM < span.fromM)
          hiddenRad = Math.max(hiddenRad, other.span.highRad);
      const lowRad = Math.max(span.lowRad, hiddenRad);
      return lowRad < span.highRad
        ? { piece, lowDeg: radToDeg(lowRad), highDeg: radToDeg(span.highRad) }
        : [];
    });
  }

  function outlineOf(thing: number, parts: readonly SeenPiece[]): ThingOutline | null {
    const azimuths = azimuthsToCut(parts);
    let topAzimuthDeg = 0;
    let topAltitudeDeg = 0;
    const cuts = azimuths.map((azimuthDeg) => {
      const column = Math.min(columns - 1, Math.floor(azimuthDeg / stepDeg));
      const azimuth = gridAzimuthOf(cells, azimuthDeg);
      const intervals = mergedIntervals(
        inSight(byColumn[column], azimuth, column)
          .filter(({ piece }) => piece.thing === thing)
          .map(({ lowDeg, highDeg }) => [lowDeg, highDeg]),
      );
      const high = intervals.at(-1)?.[1] ?? 0;
      if (high > topAltitudeDeg) {
        topAltitudeDeg = high;
        topAzimuthDeg = azimuthDeg;
      }
      return { azimuthDeg, intervals };
    });
    const rings = outlineRings(cuts);
    if (rings.length === 0) return null;
    const solid = parts[0].solid;
    const weight = faceWeight.get(thing) ?? 0;
    return {
      thing,
      solid,
      nearestM: Math.min(...parts.map(({ nearestM }) => nearestM)),
      rings,
      topAzimuthDeg,
      topAltitudeDeg,
      // A face smaller than a cell of the raster is taken as it is in its middle: next to nothing of sky.
      letsThrough: solid ? 0 : weight > 0 ? (faceSum.get(thing) ?? 0) / weight : 1,
    };
  }

  /** Azimuths of the strip, rising: the centres of the columns that a thing reaches, and where its outline bends. */
  function azimuthsToCut(parts: readonly SeenPiece[]): number[] {
    const found = [1e-5, 360 - 1e-5];
    const reached = new Set(parts);
    byColumn.forEach((candidates, column) => {
      if (candidates.some((piece) => reached.has(piece))) found.push(columnCentreDeg(cells, column));
    });
    for (const { bendsRad } of parts)
      for (const bend of bendsRad) {
        const trueDeg = radToDeg(bend + cells.convergenceRad);
        found.push(((trueDeg % 360) + 360) % 360);
      }
    return found.sort((a, b) => a - b);
  }
}
