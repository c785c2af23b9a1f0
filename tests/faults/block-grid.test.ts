import { describe, expect, it } from 'vitest';
import { findBlockGrid } from '../../src/faults/block-grid.ts';
import type { LightnessLines } from '../../src/raster/lightness-lines.ts';
import { seededNumbers } from '../pictures.ts';

/** Lines with a step at each block's edge, under noise, as many as they are long. */
function blocky(along: 'x' | 'y', length: number, pitchPx: number, seed: number): LightnessLines {
  const next = seededNumbers(seed);
  const tones = Array.from({ length }, () => 40 + 20 * next());
  const values = Array.from({ length }, () =>
    Float32Array.from({ length }, (_, i) => tones[Math.floor(i / pitchPx)]! + next()),
  );
  const boxPx = { x: 0, y: 0, width: length, height: length };
  return { along, boxPx, length, values, at: Array.from({ length }, (_, i) => i) };
}

describe('findBlockGrid', () => {
  it('finds the pitch that was built in', () => {
    const grid = findBlockGrid(blocky('x', 400, 8, 1), blocky('y', 400, 8, 2));
    expect(grid!.pitchPx).toBeCloseTo(8, 1);
  });

  // The reach of the search goes beyond every pitch there, even below nothing.
  it('ends on pictures of a few blocks, with a pitch between 4 and 64 px or none', () => {
    for (let length = 1; length <= 130; length += 3)
      for (const pitch of [3, 5, 8, 13, 21, 34, 55]) {
        const grid = findBlockGrid(blocky('x', length, pitch, length), blocky('y', length, pitch, pitch));
        if (grid === null) continue;
        expect(grid.pitchPx).toBeGreaterThanOrEqual(4 * 0.98);
        expect(grid.pitchPx).toBeLessThanOrEqual(64 * 1.02);
      }
  });
});
