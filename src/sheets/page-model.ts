/**
 * A printed page as plain marks, in millimetres from its top left corner, x to the right and y down.
 * Both outputs (SVG and PDF) draw exactly these, in this order.
 */
export type PointMm = readonly [number, number];

export interface Stroke {
  readonly ink: string;
  readonly widthMm: number;
  /** Lengths of dash and gap, millimetres; absent: solid. */
  readonly dashMm?: readonly number[];
}

export interface LineMark {
  readonly mark: 'line';
  readonly pointsMm: readonly PointMm[];
  readonly stroke: Stroke;
}
/** Several separate lines with one stroke: hatching, contours. */
export interface LinesMark {
  readonly mark: 'lines';
  readonly linesMm: readonly (readonly PointMm[])[];
  readonly stroke: Stroke;
}
/** Rings are closed implicitly and filled by the even-odd rule. */
export interface PolygonMark {
  readonly mark: 'polygon';
  readonly ringsMm: readonly (readonly PointMm[])[];
  readonly fill?: string;
  readonly stroke?: Stroke;
}
export interface CircleMark {
  readonly mark: 'circle';
  readonly centreMm: PointMm;
  readonly radiusMm: number;
  readonly fill?: string;
  readonly stroke?: Stroke;
}
export interface TextMark {
  readonly mark: 'text';
  /** On the baseline; where on the text it lies, `anchor` says. */
  readonly atMm: PointMm;
  readonly text: string;
  readonly sizeMm: number;
  readonly ink: string;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Clockwise, degrees. */
  readonly turnDeg?: number;
  /** Paper-coloured rim, so that it reads over a dark map. */
  readonly haloMm?: number;
}
/** Marks of which only what lies in the box is shown. */
export interface ClipMark {
  readonly mark: 'clip';
  readonly boxMm: BoxMm;
  readonly marks: readonly Mark[];
}
export type Mark = LineMark | LinesMark | PolygonMark | CircleMark | TextMark | ClipMark;

export interface BoxMm {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface PageModel {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
}
