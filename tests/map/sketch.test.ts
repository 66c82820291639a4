import { describe, expect, it } from 'vitest';
import type { LonLat } from '../../src/geo/frame.ts';
import { distanceM } from '../../src/geo/geodesic.ts';
import { type KeyPress, keyCommand } from '../../src/map/drawing/key-commands.ts';
import { measureRows, moveWords } from '../../src/map/drawing/measure-words.ts';
import {
  crossMoved,
  emptySketch,
  type Sketch,
  type SketchOutcome,
  sketchFeatures,
  sketchMeasures,
  stepSketch,
} from '../../src/map/drawing/sketch.ts';

const START: LonLat = [-64.5, 45.1];
const key = (name: string, held: Partial<KeyPress> = {}): KeyPress => ({
  key: name,
  shiftKey: false,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  ...held,
});

/** Draws by keys alone, as the map does: arrows move the cross, Enter places. */
function press(sketch: Sketch, ...keys: KeyPress[]): SketchOutcome {
  let outcome: SketchOutcome = { sketch, finished: null, refusal: null };
  for (const one of keys) {
    const command = keyCommand(one)!;
    const now = outcome.sketch;
    if (command.do === 'step')
      outcome = stepSketch(now, {
        do: 'move',
        to: crossMoved(now.cross, 0, command.turnDeg, command.lengthM),
      });
    else if (command.do === 'place') outcome = stepSketch(now, { do: 'place', reachM: 0.005 });
    else if (command.do === 'take-back' || command.do === 'finish')
      outcome = stepSketch(now, { do: command.do });
  }
  return outcome;
}
const enter = key('Enter');
const right10 = key('ArrowRight', { shiftKey: true });
const up10 = key('ArrowUp', { shiftKey: true });

describe('keys on the map', () => {
  it('move the cross by 1 m, with Shift by 10 m, with Alt by a tenth', () => {
    for (const [press, lengthM] of [
      [key('ArrowUp'), 1],
      [key('ArrowUp', { shiftKey: true }), 10],
      [key('ArrowUp', { altKey: true }), 0.1],
    ] as const) {
      const command = keyCommand(press);
      if (command?.do !== 'step') throw new Error('expected a step');
      const to = crossMoved(START, 0, command.turnDeg, command.lengthM);
      expect(distanceM(START, to)).toBeCloseTo(lengthM, 6);
      expect(to[1]).toBeGreaterThan(START[1]);
    }
  });

  it('follow the top of a turned map', () => {
    const to = crossMoved(START, 90, 0, 5);
    expect(to[0]).toBeGreaterThan(START[0]);
    expect(to[1]).toBeCloseTo(START[1], 6);
  });

  it('leave what they have no use for to the page', () => {
    expect(keyCommand(key('Tab'))).toBeNull();
    expect(keyCommand(key('s', { ctrlKey: true }))).toBeNull();
    expect(keyCommand(key('ArrowLeft', { ctrlKey: true }))).toBeNull();
    expect(keyCommand(key('z', { ctrlKey: true, shiftKey: true }))).toBeNull();
    expect(keyCommand(key('d', { metaKey: true }))).toEqual({ do: 'duplicate' });
  });
});

describe('drawing by keys', () => {
  it('places a tree with one Enter', () => {
    const { finished, sketch } = press(emptySketch('Point', START), key('ArrowRight'), enter);
    expect(finished?.type).toBe('Point');
    expect(sketch.corners).toEqual([]);
  });

  it('draws a line and finishes when Enter is pressed twice', () => {
    const { finished } = press(emptySketch('LineString', START), enter, right10, enter, up10, enter, enter);
    if (finished?.type !== 'LineString') throw new Error('expected a line');
    expect(finished.coordinates).toHaveLength(3);
    expect(distanceM(finished.coordinates[1], finished.coordinates[2])).toBeCloseTo(10, 5);
  });

  it('closes an area at its first corner', () => {
    const left10 = key('ArrowLeft', { shiftKey: true });
    const corners = press(emptySketch('Polygon', START), enter, right10, enter, up10, enter, left10, enter);
    expect(corners.sketch.corners).toHaveLength(4);
    const back = stepSketch(corners.sketch, { do: 'move', to: START });
    const { finished } = stepSketch(back.sketch, { do: 'place', reachM: 0.005 });
    if (finished?.type !== 'Polygon') throw new Error('expected an area');
    expect(finished.coordinates[0]).toHaveLength(5);
    expect(finished.coordinates[0][0]).toEqual(finished.coordinates[0][4]);
  });

  it('takes the last point back', () => {
    const { sketch } = press(emptySketch('LineString', START), enter, right10, enter, key('Backspace'));
    expect(sketch.corners).toEqual([START]);
    expect(press(emptySketch('LineString', START), key('Backspace')).sketch.corners).toEqual([]);
  });

  it('says why it does not finish too early, and keeps what was drawn', () => {
    const line = press(emptySketch('LineString', START), enter, key('Enter', { ctrlKey: true }));
    expect(line.finished).toBeNull();
    expect(line.refusal).toMatch(/two points/);
    expect(line.sketch.corners).toHaveLength(1);
    const area = press(emptySketch('Polygon', START), enter, right10, enter, enter);
    expect(area.refusal).toMatch(/three corners/);
  });

  it('refuses an outline that crosses itself', () => {
    const places: LonLat[] = [
      [-64.5, 45.1],
      [-64.499, 45.101],
      [-64.499, 45.1],
      [-64.5, 45.101],
    ];
    const bowTie: Sketch = { shape: 'Polygon', corners: places, cross: places[3] };
    const { finished, refusal } = stepSketch(bowTie, { do: 'finish' });
    expect(finished).toBeNull();
    expect(refusal).toMatch(/crosses itself/);
  });
});

describe('measures beside the cross', () => {
  it('give distance and bearing from the last point, distance from the start, length and area', () => {
    const { sketch } = press(emptySketch('Polygon', START), enter, right10, enter, up10);
    const measures = sketchMeasures(sketch);
    expect(measures.fromLastM).toBeCloseTo(10, 5);
    expect(measures.bearingDeg! % 360).toBeCloseTo(0, 5);
    expect(measures.fromStartM).toBeCloseTo(Math.SQRT2 * 10, 3);
    expect(measures.lengthM).toBeCloseTo(20, 4);
    expect(measures.areaM2).toBeCloseTo(50, 2);
  });

  it('are read in the units of the person', () => {
    const { sketch } = press(emptySketch('LineString', START), enter, right10);
    expect(measureRows(sketchMeasures(sketch), 'metric')[0]).toEqual({
      label: 'From the last point',
      value: '10.00 m at 090° (east)',
    });
    expect(measureRows(sketchMeasures(sketch), 'imperial')[0].value).toBe('32.8 ft at 090° (east)');
    expect(measureRows(sketchMeasures(emptySketch('LineString', START)), 'metric')).toEqual([]);
  });

  it('give the last side where a finger has just placed a point', () => {
    const { sketch } = press(emptySketch('LineString', START), enter, right10, enter);
    expect(measureRows(sketchMeasures(sketch), 'metric')[0]).toEqual({
      label: 'Last side',
      value: '10.00 m',
    });
  });

  it('tell how far something has been moved', () => {
    expect(moveWords(0, 0, 'metric')).toBe('not moved yet');
    expect(moveWords(-3, 0, 'metric')).toBe('3.00 m at 270° (west)');
  });
});

describe('the sketch on the map', () => {
  it('is a line to the cross, then an area, with its corners', () => {
    const one = press(emptySketch('Polygon', START), enter, right10).sketch;
    expect(sketchFeatures(one).features.map(({ geometry }) => geometry.type)).toEqual([
      'LineString',
      'Point',
    ]);
    const two = press(one, enter, up10).sketch;
    expect(sketchFeatures(two).features.map(({ geometry }) => geometry.type)).toEqual([
      'Polygon',
      'Point',
      'Point',
    ]);
  });
});
