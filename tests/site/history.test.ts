import { describe, expect, it } from 'vitest';
import {
  abandonGesture,
  beginGesture,
  commitGesture,
  gestureBase,
  preview,
  push,
  redo,
  redoLabel,
  startHistory,
  undo,
  undoLabel,
} from '../../src/site/history.ts';

describe('history', () => {
  it('undoes and redoes step by step, with the label of each', () => {
    let h = push(push(startHistory('a'), 'to b', 'b'), 'to c', 'c');
    expect([undoLabel(h), redoLabel(h)]).toEqual(['to c', null]);
    h = undo(h);
    expect([h.present, undoLabel(h), redoLabel(h)]).toEqual(['b', 'to b', 'to c']);
    h = undo(undo(h));
    expect([h.present, undoLabel(h), redoLabel(h)]).toEqual(['a', null, 'to b']);
    h = redo(redo(redo(h)));
    expect([h.present, redoLabel(h)]).toEqual(['c', null]);
  });

  it('forgets what was undone once something else is done', () => {
    const h = push(undo(push(startHistory('a'), 'to b', 'b')), 'to x', 'x');
    expect(redo(h).present).toBe('x');
    expect(undo(h).present).toBe('a');
  });

  it('makes one step of a gesture, however many previews it had', () => {
    let h = startHistory('a');
    for (const d of ['a1', 'a2', 'a3']) h = preview(h, d);
    expect([h.present, gestureBase(h), undoLabel(h)]).toEqual(['a3', 'a', null]);
    h = commitGesture(h, 'drag');
    expect([h.present, undoLabel(h), h.past.length]).toEqual(['a3', 'drag', 1]);
    expect(undo(h).present).toBe('a');
    expect(redo(undo(h)).present).toBe('a3');
  });

  it('leaves nothing of a gesture that is abandoned, undone, or that changed nothing', () => {
    const h = push(startHistory('a'), 'to b', 'b');
    expect(abandonGesture(preview(h, 'b1'))).toEqual(h);
    expect(undo(preview(h, 'b1'))).toEqual(h);
    expect(commitGesture(beginGesture(h), 'drag')).toEqual(h);
    expect(push(h, 'nothing', 'b')).toEqual(h);
  });

  it('keeps redo through a gesture that is abandoned', () => {
    const h = undo(push(startHistory('a'), 'to b', 'b'));
    expect(redo(abandonGesture(preview(h, 'x'))).present).toBe('b');
  });

  it('gives up a gesture when another edit comes in between', () => {
    const h = push(preview(startHistory('a'), 'a1'), 'to b', 'b');
    expect(undo(h).present).toBe('a');
    expect(h.gestureFrom).toBeUndefined();
  });

  it('keeps the last two hundred steps', () => {
    let h = startHistory(0);
    for (let i = 1; i <= 300; i++) h = push(h, `to ${i}`, i);
    for (let i = 0; i < 400; i++) h = undo(h);
    expect(h.present).toBe(100);
  });
});
