import { expect, test } from 'vitest';
import { keyCommand } from '../../src/map/drawing/key-commands.ts';

const press = (
  key: string,
  held: Partial<Record<'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey', true>> = {},
) => keyCommand({ key, shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...held });

test('H shows the horizon from the cross, in either case and alone', () => {
  expect(press('h')).toEqual({ do: 'horizon' });
  expect(press('H', { shiftKey: true })).toEqual({ do: 'horizon' });
  expect(press('h', { ctrlKey: true })).toBeNull();
  expect(press('h', { altKey: true })).toBeNull();
});

test('arrow keys step by a metre, by ten with Shift, by a tenth with Alt', () => {
  expect(press('ArrowRight')).toEqual({ do: 'step', turnDeg: 90, lengthM: 1 });
  expect(press('ArrowRight', { shiftKey: true })).toEqual({ do: 'step', turnDeg: 90, lengthM: 10 });
  expect(press('ArrowRight', { altKey: true })).toEqual({ do: 'step', turnDeg: 90, lengthM: 0.1 });
});
