import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type BusySquares, busySpansOf, findBusySquares } from '../../src/faults/busy-spans.ts';

const planes = fc
  .record({ widthPx: fc.integer({ min: 1, max: 90 }), heightPx: fc.integer({ min: 1, max: 70 }) })
  .chain((size) =>
    fc
      .array(fc.tuple(fc.nat(size.widthPx * size.heightPx - 1), fc.nat(255)), { maxLength: 6 })
      .map((dots) => {
        const codes = new Uint8Array(size.widthPx * size.heightPx).fill(200);
        for (const [at, code] of dots) codes[at] = code;
        return { ...size, codes };
      }),
  );

function spansOf(squares: BusySquares, y: number): [from: number, to: number][] {
  const ends = busySpansOf(squares, y);
  return Array.from({ length: ends.length / 2 }, (_, i) => [ends[2 * i]!, ends[2 * i + 1]!]);
}

it('leaves out no pixel with contrast in its reach, visits rows in order and no pixel twice', () => {
  fc.assert(
    fc.property(planes, fc.integer({ min: 1, max: 24 }), (plane, reach) => {
      const { widthPx, heightPx, codes } = plane;
      const seen = new Uint8Array(codes.length);
      let last = -1;
      const squares = findBusySquares(plane, 60, reach);
      for (let y = 0; y < heightPx; y += 1)
        for (const [from, to] of spansOf(squares, y))
          for (let x = from; x < to; x += 1) {
            expect(y * widthPx + x).toBeGreaterThan(last);
            last = y * widthPx + x;
            seen[last] = 1;
          }
      const odd = [...codes.keys()].filter((at) => Math.abs(codes[at]! - 200) >= 60);
      for (let at = 0; at < codes.length; at += 1) {
        const near = odd.some(
          (other) =>
            Math.abs((other % widthPx) - (at % widthPx)) <= reach &&
            Math.abs(Math.floor(other / widthPx) - Math.floor(at / widthPx)) <= reach,
        );
        if (near && widthPx * heightPx > 1 && codes.some((code) => Math.abs(code - codes[odd[0]!]!) >= 60))
          expect(seen[at]).toBe(1);
      }
    }),
    { numRuns: 300 },
  );
});

it('leaves out what is even, up to the contrast', () => {
  const plane = { widthPx: 200, heightPx: 200, codes: new Uint8Array(40_000).fill(100) };
  const count = () => {
    let pixels = 0;
    const squares = findBusySquares(plane, 60, 5);
    for (let y = 0; y < 200; y += 1) for (const [from, to] of spansOf(squares, y)) pixels += to - from;
    return pixels;
  };
  plane.codes[20_100] = 159;
  expect(count()).toBe(0);
  plane.codes[20_100] = 160;
  // The square of that pixel and the eight around it.
  expect(count()).toBe(48 * 48);
});
