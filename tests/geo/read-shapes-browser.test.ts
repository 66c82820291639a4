// @vitest-environment jsdom
import { expect, it } from 'vitest';
import { readShapes } from '../../src/geo/formats/read-shapes.ts';
import { textBytes } from './files.ts';

const gpx = (points: string) =>
  textBytes(`<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">${points}`);

it("reads a track with the browser's own XML parser", () => {
  expect(typeof DOMParser).toBe('function');
  const [shape] = readShapes('gate.gpx', gpx('<wpt lat="45.1" lon="-64.5"><name>gate</name></wpt></gpx>'));
  expect(shape).toEqual({ geometry: { type: 'Point', coordinates: [-64.5, 45.1] }, name: 'gate' });
});

it('refuses a broken one with the same sentence', () => {
  expect(() => readShapes('gate.gpx', gpx('<wpt lat="45.1"'))).toThrow(/^gate\.gpx: this is not a GPX file/);
});
