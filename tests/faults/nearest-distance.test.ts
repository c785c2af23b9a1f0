import fc from 'fast-check';
import { expect, it } from 'vitest';
import { measureNearest } from '../../src/faults/nearest-distance.ts';

it('is the chessboard distance to the nearest marked pixel, up to the cap', () => {
  const pictures = fc
    .record({
      width: fc.integer({ min: 1, max: 9 }),
      height: fc.integer({ min: 1, max: 9 }),
      cap: fc.integer({ min: 1, max: 6 }),
    })
    .chain(({ width, height, cap }) =>
      fc
        .array(fc.integer({ min: 0, max: 5 }), { minLength: width * height, maxLength: width * height })
        .map((dice) => ({ width, cap, marked: Uint8Array.from(dice, (one) => (one === 0 ? 1 : 0)) })),
    );
  fc.assert(
    fc.property(pictures, ({ width, cap, marked }) => {
      // By the definition: the least of max(|dx|, |dy|).
      const byDefinition = Array.from(marked, (_, at) =>
        marked.reduce(
          (least, one, other) =>
            one === 0
              ? least
              : Math.min(
                  least,
                  Math.max(
                    Math.abs((at % width) - (other % width)),
                    Math.abs(Math.floor(at / width) - Math.floor(other / width)),
                  ),
                ),
          cap,
        ),
      );
      expect(Array.from(measureNearest(marked, width, cap))).toEqual(byDefinition);
    }),
  );
});
