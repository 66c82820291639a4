import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { frameAt, type LonLat } from '../../src/geo/frame.ts';
import { destination } from '../../src/geo/geodesic.ts';
import { pagesToPdf } from '../../src/sheets/page-to-pdf.ts';
import { pageToSvg } from '../../src/sheets/page-to-svg.ts';
import type { PlanPageInput } from '../../src/sheets/plan-input.ts';
import { planPages } from '../../src/sheets/plan-page.ts';
import { samplePlan } from './sample-plan.ts';

const require = createRequire(import.meta.url);
const font = (name: string) =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/atkinson-hyperlegible-next/${name}.ttf`)));
const fonts = {
  regular: font('400Regular/AtkinsonHyperlegibleNext_400Regular'),
  bold: font('700Bold/AtkinsonHyperlegibleNext_700Bold'),
};

/** Only one line on the map: a path of 50 m at an azimuth. */
function planOfOneLine(from: LonLat, azimuthDeg: number, changes: Partial<PlanPageInput>): PlanPageInput {
  return {
    ...samplePlan(from),
    frame: frameAt(from),
    fields: [],
    belts: [],
    buildings: [],
    patches: [],
    trees: [],
    ground: null,
    bandMap: null,
    paths: [{ label: 'tape', line: [from, destination(from, azimuthDeg, 50)] }],
    ...changes,
  };
}

interface Segment {
  readonly lengthMm: number;
  /** Clockwise from the top of the page. */
  readonly turnDeg: number;
}
const segment = (x1: number, y1: number, x2: number, y2: number): Segment => ({
  lengthMm: Math.hypot(x2 - x1, y2 - y1),
  turnDeg: ((Math.atan2(x2 - x1, y1 - y2) * 180) / Math.PI + 360) % 360,
});

/** The two-point line inside the map's clip of an SVG, measured in millimetres by the size the file states. */
function measuredInSvg(svg: string): Segment {
  const widthMm = Number(/width="([\d.]+)mm"/.exec(svg)![1]);
  const userWidth = Number(/viewBox="0 0 ([\d.]+)/.exec(svg)![1]);
  const inside = svg.slice(svg.indexOf('<svg x='), svg.indexOf('</svg>'));
  const [x1, y1, x2, y2] = /d="M([\d.-]+) ([\d.-]+)L([\d.-]+) ([\d.-]+)"/
    .exec(inside)!
    .slice(1)
    .map((value) => (Number(value) * widthMm) / userWidth);
  return segment(x1, y1, x2, y2);
}

/** The same line among the drawing operators of a PDF, measured in millimetres. */
function measuredInPdf(pdf: string): Segment {
  const inside = pdf.slice(pdf.search(/\sW\s/), pdf.indexOf('\nQ'));
  const [x1, y1, x2, y2] = /([\d.-]+) ([\d.-]+) m\s+([\d.-]+) ([\d.-]+) l/
    .exec(inside)!
    .slice(1)
    .map((value) => (Number(value) * 25.4) / 72);
  // PDF counts upwards.
  return segment(x1, -y1, x2, -y2);
}

const places: [string, LonLat][] = [
  ['near the middle of a zone', [-63.1, 45.1]],
  ['near the edge of a zone at 60° N', [5.95, 60]],
  ['south of the equator', [171.9, -43.6]],
];

describe('a line of 50 m on the ground', () => {
  for (const [name, place] of places) {
    for (const scale of [200, 250, 500]) {
      it(`measures ${50_000 / scale} mm at 1 : ${scale}, ${name}, in both outputs`, () => {
        for (const azimuthDeg of [0, 90, 211]) {
          const pages = planPages(planOfOneLine(place, azimuthDeg, { scale, paper: 'A3' }));
          const pdf = Buffer.from(pagesToPdf(pages, fonts, { compressed: false })).toString('latin1');
          for (const measured of [measuredInSvg(pageToSvg(pages[0])), measuredInPdf(pdf)]) {
            expect(Math.abs(measured.lengthMm - 50_000 / scale)).toBeLessThan(0.1);
            // True north is at the top, whatever the convergence of the grid.
            const off = Math.abs(((measured.turnDeg - azimuthDeg + 540) % 360) - 180);
            expect(off).toBeLessThan(0.02);
          }
        }
      });
    }
  }

  it('turns with the azimuth that is chosen for the top of the page', () => {
    const pages = planPages(planOfOneLine([-64.5, 45.1], 120, { scale: 500, upAzimuthDeg: 30 }));
    const measured = measuredInSvg(pageToSvg(pages[0]));
    expect(measured.turnDeg).toBeCloseTo(90, 1);
    expect(measured.lengthMm).toBeCloseTo(100, 1);
  });
});

describe('the PDF', () => {
  it('has the size of the paper and carries its type', () => {
    const pages = planPages(samplePlan([-64.5, 45.1], { paper: 'Legal', orientation: 'portrait' }));
    const pdf = Buffer.from(pagesToPdf(pages, fonts, { compressed: false })).toString('latin1');
    const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!.map(Number);
    expect((width * 25.4) / 72).toBeCloseTo(215.9, 2);
    expect((height * 25.4) / 72).toBeCloseTo(355.6, 2);
    expect(pdf).toContain('/PrintScaling /None');
    expect(pdf.match(/\/FontFile2/g)).toHaveLength(2);
  });
});
