import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RectMm } from '../../../src/geometry/rectangle.ts';
import { FreeRoom } from '../../../src/sheet/marks/free-room.ts';

const AREA = { x: 3, y: 5, width: 24, height: 17 };
const box = fc.record({
  x: fc.double({ min: -4, max: 30, noNaN: true }),
  y: fc.double({ min: -4, max: 26, noNaN: true }),
  width: fc.double({ min: 0.2, max: 12, noNaN: true }),
  height: fc.double({ min: 0.2, max: 9, noNaN: true }),
});
const size = fc.record({ width: fc.integer({ min: 1, max: 12 }), height: fc.integer({ min: 1, max: 9 }) });
const meet = (one: RectMm, other: RectMm) =>
  one.x < other.x + other.width &&
  other.x < one.x + one.width &&
  one.y < other.y + other.height &&
  other.y < one.y + one.height;

describe('FreeRoom', () => {
  it('finds what asking every whole millimetre finds, however often it was taken from and asked before', () => {
    const step = fc.oneof(
      fc.record({ take: box }),
      fc.record({ find: size, right: fc.double({ min: -3, max: 3, noNaN: true }) }),
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 25 }), (steps) => {
        const room = new FreeRoom(AREA);
        const cells: RectMm[] = [];
        const takenCells = new Set<RectMm>();
        for (let y = 0; y < AREA.height; y++)
          for (let x = 0; x < AREA.width; x++)
            cells.push({ x: AREA.x + x, y: AREA.y + y, width: 1, height: 1 });
        for (const one of steps) {
          if ('take' in one) {
            room.take(one.take);
            for (const cell of cells) if (meet(cell, one.take)) takenCells.add(cell);
            continue;
          }
          const cost = ({ x, y }: RectMm) => Math.abs(y - 11) + one.right * x;
          let best: RectMm | null = null;
          for (const { x, y } of cells) {
            const place = { x, y, ...one.find };
            if (x + place.width > AREA.x + AREA.width || y + place.height > AREA.y + AREA.height) continue;
            if ([...takenCells].some((cell) => meet(cell, place))) continue;
            if (best === null || cost(place) < cost(best)) best = place;
          }
          expect(room.findPlace(one.find.width, one.find.height, cost)).toEqual(best);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('tells a price once it is too high without asking for the rest of it', () => {
    const room = new FreeRoom(AREA);
    const asked: number[] = [];
    room.findPlace(4, 4, ({ x }, least) => {
      asked.push(least);
      return x;
    });
    expect([asked[0], asked[1], Math.min(...asked)]).toEqual([Infinity, AREA.x, AREA.x]);
  });
});
