import { describe, expect, it } from 'vitest';
import { nextTag } from '../../src/plants/tag.ts';

describe('tags', () => {
  it('start at 1 and go on from the highest in use', () => {
    expect(nextTag('N', [])).toBe('N1');
    expect(nextTag('N', ['N1', 'F7', undefined, 'N 4', 'n2', 'Nurse 9'])).toBe('N5');
  });
});
