import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convertGrid3 } from '../../src/icc/convert-grid3.ts';
import { makeFastGrid3 } from '../../src/icc/convert-grid3-fast.ts';
import { makePixelGrid } from '../../src/icc/pixel-grid.ts';
import { makeGenerator } from './random-colours.ts';

/** A grid of random numbers from -1 to 2, so that the results of many colours are clipped. */
function randomGrid(sizes: readonly [number, number, number], outputs: number, seed: number) {
  const next = makeGenerator(seed);
  const values = Float32Array.from(
    { length: sizes[0] * sizes[1] * sizes[2] * outputs },
    () => (next() / 2 ** 32) * 3 - 1,
  );
  const shapes = sizes.map((_, i) => (value: number) => value ** (1 + i / 2));
  return makePixelGrid({ sizes, shapes, values, outputs }, 255);
}

// The plain loop is the second implementation, and the one for machines without such instructions.
describe('the fast loop', () => {
  it('gives the bytes of the plain one, with any number of outputs, any stride and any order of fractions', () => {
    const size = fc.integer({ min: 2, max: 19 });
    fc.assert(
      fc.property(
        fc.tuple(size, size, size),
        fc.integer({ min: 1, max: 4 }),
        fc.nat({ max: 3 }),
        fc.nat({ max: 3 }),
        fc.nat(),
        (sizes, outputs, sourceSpare, targetSpare, seed) => {
          const grid = randomGrid(sizes, outputs, seed);
          const pixels = 400;
          const [from, to] = [3 + sourceSpare, outputs + targetSpare];
          const next = makeGenerator(seed + 1);
          const source = Uint8Array.from({ length: pixels * from }, () => next() >>> 24);
          const [plain, fast] = [new Uint8Array(pixels * to).fill(9), new Uint8Array(pixels * to).fill(9)];
          convertGrid3(source, plain, pixels, from, to, grid);
          makeFastGrid3(grid)(source, fast, pixels, from, to);
          expect(fast).toEqual(plain);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('does so for pictures longer than a run, in place too', () => {
    const grid = randomGrid([9, 9, 9], 4, 5);
    const next = makeGenerator(6);
    const pixels = 50_001;
    const own = Uint8Array.from({ length: pixels * 4 }, () => next() >>> 24);
    const plain = new Uint8Array(own.length);
    convertGrid3(own, plain, pixels, 4, 4, grid);
    makeFastGrid3(grid)(own, own, pixels, 4, 4);
    expect(own).toEqual(plain);
  });

  it('writes nothing for no pixels', () => {
    const target = new Uint8Array([1, 2, 3]);
    makeFastGrid3(randomGrid([3, 3, 3], 3, 1))(new Uint8Array(), target, 0, 3, 3);
    expect(target).toEqual(new Uint8Array([1, 2, 3]));
  });
});
