import { describe, expect, it } from 'vitest';
import { judgeFactor, judgeStraight } from '../../src/faults/judge-factor.ts';
import { PATCH_PX } from '../../src/faults/sampling.ts';
import { seededNumbers } from '../pictures.ts';

/** Patches of straight lines between samples of chance, so many codes high, at a phase that is none of 8. */
function straightPatches(factor: number, codes: number, isRounded: boolean): Float64Array[] {
  return Array.from({ length: 12 }, (_, i) => {
    const next = seededNumbers(40 + i);
    const samples = Float64Array.from({ length: PATCH_PX }, () => codes * next());
    const patch = Float64Array.from({ length: PATCH_PX }, (_, k) => {
      const place = k / factor + 3 / 16;
      const [at, part] = [Math.floor(place), place % 1];
      const code = samples[at]! * (1 - part) + samples[at + 1]! * part;
      return isRounded ? Math.round(code) : code;
    });
    const mean = patch.reduce((sum, code) => sum + code, 0) / PATCH_PX;
    return patch.map((code) => code - mean);
  });
}

describe('how well a factor explains patches', () => {
  it('is told of straight lines by phases as fine as their corners', () => {
    const patches = straightPatches(6, 60, true);
    const straight = judgeStraight(patches, 6);
    // Of gray codes rounding leaves 1 / sqrt 12.
    expect(straight.left).toBeLessThan(1.2 / Math.sqrt(12));
    expect(straight.dip).toBeGreaterThan(3);
    expect(judgeFactor(patches, 6).left).toBeGreaterThan(2 * straight.left);
  });

  it('is not told by what is far less than rounding leaves', () => {
    expect(judgeStraight(straightPatches(3, 60, false), 3).dip).toBeGreaterThan(3);
    expect(judgeStraight(straightPatches(3, 0.5, false), 3).dip).toBeLessThan(1);
  });
});
