import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/geometry/drawing.ts';
import { moveDrawing, movePath, movePoint, moveRect, type RigidMove } from '../../src/geometry/rigid-move.ts';

const black = { r: 0, g: 0, b: 0 };
const whole = fc.integer({ min: -500, max: 500 });
const point = fc.record({ x: whole, y: whole });
const move: fc.Arbitrary<RigidMove> = fc.record({
  mirrored: fc.boolean(),
  turn: fc.constantFrom(0, 90, 180, 270),
  by: point,
});

describe('moving drawings', () => {
  it('mirrors, then turns clockwise as seen on the page, then shifts', () => {
    expect(movePoint({ x: 3, y: 1 }, { turn: 90 })).toEqual({ x: -1, y: 3 });
    expect(movePoint({ x: 3, y: 1 }, { mirrored: true, turn: 90 })).toEqual({ x: -1, y: -3 });
    expect(movePoint({ x: 3, y: 1 }, { turn: 270, by: { x: 10, y: 20 } })).toEqual({ x: 11, y: 17 });
  });

  it('four quarter turns and two mirrorings change nothing', () => {
    fc.assert(
      fc.property(point, (start) => {
        let at = start;
        for (let i = 0; i < 4; i++) at = movePoint(at, { turn: 90 });
        expect(movePoint(movePoint(at, { mirrored: true }), { mirrored: true })).toEqual(start);
      }),
    );
  });

  it('keeps distances, and rectangles the box of their corners', () => {
    fc.assert(
      fc.property(point, point, move, (one, other, how) => {
        const [a, b] = [movePoint(one, how), movePoint(other, how)];
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(Math.hypot(one.x - other.x, one.y - other.y), 9);
        const rect = {
          x: Math.min(one.x, other.x),
          y: Math.min(one.y, other.y),
          width: Math.abs(one.x - other.x),
          height: Math.abs(one.y - other.y),
        };
        expect(moveRect(rect, how)).toEqual({
          x: Math.min(a.x, b.x),
          y: Math.min(a.y, b.y),
          width: Math.abs(a.x - b.x),
          height: Math.abs(a.y - b.y),
        });
      }),
    );
  });

  it('moves every kind of mark and every point of a path', () => {
    const drawing: Drawing = [
      { kind: 'line', from: { x: 0, y: 0 }, to: { x: 2, y: 0 }, widthMm: 0.25, colour: black },
      { kind: 'rect', rectMm: { x: 1, y: 2, width: 3, height: 4 }, colour: black },
      { kind: 'path', path: [['M', 1, 0], ['Q', 2, 0, 2, 1], ['C', 3, 1, 4, 2, 5, 2], ['Z']], colour: black },
    ];
    const moved = moveDrawing(drawing, { mirrored: true, by: { x: 10, y: 0 } });
    expect(moved).toEqual([
      { kind: 'line', from: { x: 10, y: 0 }, to: { x: 8, y: 0 }, widthMm: 0.25, colour: black },
      { kind: 'rect', rectMm: { x: 6, y: 2, width: 3, height: 4 }, colour: black },
      { kind: 'path', path: [['M', 9, 0], ['Q', 8, 0, 8, 1], ['C', 7, 1, 6, 2, 5, 2], ['Z']], colour: black },
    ]);
    expect(movePath([['M', 1, 2], ['L', 3, 4], ['Z']], { turn: 180 })).toEqual([
      ['M', -1, -2],
      ['L', -3, -4],
      ['Z'],
    ]);
  });
});
