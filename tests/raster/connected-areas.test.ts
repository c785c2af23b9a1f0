import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findConnectedAreas, findLargestArea } from '../../src/raster/connected-areas.ts';

const maskOf = (rows: readonly string[]) => Uint8Array.from(rows.join(''), (mark) => (mark === '#' ? 1 : 0));

/** Flood fill, pixel by pixel. */
function floodSizes(mask: Uint8Array, width: number): number[] {
  const left = Uint8Array.from(mask);
  const height = mask.length / width;
  const sizes: number[] = [];
  for (let start = 0; start < left.length; start += 1) {
    if (left[start] === 0) continue;
    const stack = [start];
    left[start] = 0;
    let size = 0;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      size += 1;
      const x = at % width;
      const y = (at - x) / width;
      for (let dy = -1; dy <= 1; dy += 1)
        for (let dx = -1; dx <= 1; dx += 1) {
          const [nx, ny] = [x + dx, y + dy];
          if (nx < 0 || ny < 0 || nx >= width || ny >= height || left[ny * width + nx] === 0) continue;
          left[ny * width + nx] = 0;
          stack.push(ny * width + nx);
        }
    }
    sizes.push(size);
  }
  return sizes.sort((a, b) => b - a);
}

describe('findConnectedAreas', () => {
  it('finds a bowl as one, a diagonal as one, and boxes where they are', () => {
    const areas = findConnectedAreas(maskOf(['#...#.#', '#...#..', '.###...', '......#']), 7);
    expect(areas).toEqual([
      { pixels: 7, boxPx: { x: 0, y: 0, width: 5, height: 3 } },
      { pixels: 1, boxPx: { x: 6, y: 0, width: 1, height: 1 } },
      { pixels: 1, boxPx: { x: 6, y: 3, width: 1, height: 1 } },
    ]);
  });

  it('nothing marked gives nothing; everything marked gives one', () => {
    expect(findConnectedAreas(new Uint8Array(12), 4)).toEqual([]);
    expect(findConnectedAreas(new Uint8Array(12).fill(1), 4)).toEqual([
      { pixels: 12, boxPx: { x: 0, y: 0, width: 4, height: 3 } },
    ]);
  });

  it('leaves out what is too small, and knows the largest', () => {
    const mask = maskOf(['#...#.#', '#...#..', '.###...', '......#']);
    expect(findConnectedAreas(mask, 7, 2).map(({ pixels }) => pixels)).toEqual([7]);
    expect(findLargestArea(mask, 7)?.pixels).toBe(7);
    expect(findLargestArea(new Uint8Array(12), 4)).toBeNull();
  });

  it('agrees with a flood fill', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.array(fc.constantFrom(0, 1), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: 9 }),
        (width, seedRow, rows) => {
          const mask = Uint8Array.from(
            { length: width * rows },
            (_, i) => seedRow[(i * 7 + Math.floor(i / width)) % seedRow.length]!,
          );
          expect(findConnectedAreas(mask, width).map(({ pixels }) => pixels)).toEqual(
            floodSizes(mask, width),
          );
        },
      ),
      { seed: 41, numRuns: 500 },
    );
  });
});
