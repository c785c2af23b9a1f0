import fc from 'fast-check';
import { expect, it } from 'vitest';
import { measureNearest } from '../../src/faults/nearest-distance.ts';
import { seededNumbers } from '../pictures.ts';
import { askWitness, requireWitness } from '../witness.ts';

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

it('leaves beyond each distance what ImageMagick leaves when it erodes by a square of that radius', (context) => {
  requireWitness(context, 'convert');
  const [width, height] = [61, 47];
  for (const share of [0.002, 0.01, 0.05]) {
    const next = seededNumbers(share * 1000);
    const marked = Uint8Array.from({ length: width * height }, () => (next() < share ? 1 : 0));
    const nearest = measureNearest(marked, width, 9);
    for (const radius of [1, 2, 4, 7]) {
      const { stdout, stderr, status } = askWitness(
        'convert',
        [
          ...['-size', `${width}x${height}`, '-depth', '8', 'gray:mask.gray'],
          ...['-morphology', 'Erode', `Square:${radius}`, 'gray:-'],
        ],
        { 'mask.gray': Buffer.from(marked.map((one) => (one === 1 ? 0 : 255))) },
      );
      expect(status, String(stderr)).toBe(0);
      expect(Array.from(stdout as Buffer, (sample) => sample === 255)).toEqual(
        Array.from(nearest, (steps) => steps > radius),
      );
    }
  }
});
