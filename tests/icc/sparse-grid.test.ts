import { describe, expect, it } from 'vitest';
import { requireForward } from '../../src/icc/forward-stages.ts';
import { planGrid } from '../../src/icc/grid-plan.ts';
import { planSparseGrid } from '../../src/icc/sparse-grid.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import type { Stage } from '../../src/icc/stage.ts';

const source = requireForward(SRGB_PROFILE, 'relative');
/** A bump in one corner of the cube, nothing elsewhere. */
const bump: Stage = (values) => {
  const far = Math.hypot(values[0]!, values[1]!, values[2]!);
  values[0] = Math.max(0, 0.5 - far);
  values[1] = far / 2;
};

describe('planSparseGrid', () => {
  const full = planGrid(source, [bump], 3, 2);

  it('is planGrid where nothing is plain', () => {
    const { sizes, values, outputs } = planSparseGrid(source, bump, 2, () => false);
    expect(sizes).toEqual(full.sizes);
    expect(outputs).toBe(2);
    expect(values).toEqual(full.values);
  });

  it('evaluates plain cells at their corners only, and leaves no node without a value', () => {
    let calls = 0;
    const counted: Stage = (values) => {
      calls += 1;
      bump(values);
    };
    const { values } = planSparseGrid(source, counted, 2, (_, most) => most === 0);
    expect(calls).toBeLessThan(full.values.length / 2 / 4);
    expect(values.some(Number.isNaN)).toBe(false);
    for (let node = 0; node < values.length / 2; node++) {
      expect(Math.abs(values[2 * node]! - full.values[2 * node]!)).toBeLessThan(1e-6);
      expect(Math.abs(values[2 * node + 1]! - full.values[2 * node + 1]!)).toBeLessThan(0.02);
    }
  });

  it('asks of coarse cells of four intervals first, with the least and the most of the corners', () => {
    const asked: number[] = [];
    planSparseGrid(source, bump, 1, (least, most) => {
      asked.push(least, most);
      return true;
    });
    expect(asked).toHaveLength(2 * 13 ** 3);
    expect(Math.max(...asked)).toBe(0.5);
    expect(Math.min(...asked)).toBe(0);
  });
});
