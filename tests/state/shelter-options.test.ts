import { describe, expect, test } from 'vitest';
import {
  lightKey,
  patchesKey,
  sameKey,
  shelterEndsKey,
  shelterKey,
  yearsKey,
} from '../../src/state/answer-keys.ts';
import { createAppStore } from '../../src/state/store.ts';
import { smallSite } from './small-site.ts';

describe('the guesses of the shelter engine', () => {
  test('a guess that is left out asks for the wind again, and for nothing else', () => {
    const store = createAppStore(smallSite());
    const before = store.getState();
    before.show({ shelterOptions: { ...before.shelterOptions, scatteredTrees: false } });
    const after = store.getState();
    expect(after.shelterOptions.scatteredTrees).toBe(false);
    for (const key of [shelterKey, shelterEndsKey, yearsKey])
      expect(sameKey(key(before), key(after))).toBe(false);
    for (const key of [lightKey, patchesKey]) expect(sameKey(key(before), key(after))).toBe(true);
  });
});
