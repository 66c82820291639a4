import { describe, expect, test } from 'vitest';
import { placeFromText } from '../../src/geo/place-from-text.ts';

describe('a place as people write it', () => {
  test.each([
    ['45.1, -64.5', [-64.5, 45.1]],
    ['45.1 -64.5', [-64.5, 45.1]],
    ['45.1 N 64.5 W', [-64.5, 45.1]],
    ['45.1N, 64.5W', [-64.5, 45.1]],
    ['64.5 W 45.1 N', [-64.5, 45.1]],
    ['N 45.1 W 64.5', [-64.5, 45.1]],
    ['45°06\'00" N, 64°30\'00" W', [-64.5, 45.1]],
    ['45°06′ N 64°30′ W', [-64.5, 45.1]],
    ['45 06 00 N 64 30 00 W', [-64.5, 45.1]],
    ['43 36 S 171 54 E', [171.9, -43.6]],
    ['−43.6; 171.9', [171.9, -43.6]],
    ['45,1; -64,5', [-64.5, 45.1]],
  ])('%s', (text, [lon, lat]) => {
    const place = placeFromText(text);
    expect(place[0]).toBeCloseTo(lon, 6);
    expect(place[1]).toBeCloseTo(lat, 6);
  });

  test.each(['', 'here', '45.1', '95, 10', '45, 200', '45 N 46 N', '45°75′ N 64°30′ W'])(
    'refuses %s',
    (text) => {
      expect(() => placeFromText(text)).toThrow(/expected/);
    },
  );
});
