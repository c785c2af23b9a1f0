import { describe, expect, it } from 'vitest';
import { LIMITS, limitsWith } from '../../src/formats/limits.ts';

describe('limits', () => {
  it('has a limit for every name, with its reason', () => {
    for (const [name, limit] of Object.entries(LIMITS)) {
      expect(limit.value, name).toBeGreaterThan(0);
      expect(limit.source.length, name).toBeGreaterThan(20);
    }
    expect(limitsWith({ maxPixels: 5 })).toEqual({ ...limitsWith(), maxPixels: 5 });
  });
});
