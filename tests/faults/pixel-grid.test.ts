import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPixelGrid } from '../../src/faults/pixel-grid.ts';
import { seededNumbers } from '../pictures.ts';

const MOST = 16;
/** Where pixels that were repeated `pitch` times change, where a third of them differ from the next. */
function changesOf(pitch: number, seed: number, count = 60): number[] {
  const next = seededNumbers(seed);
  const start = next();
  return Array.from({ length: 3 * count }, (_, k) => Math.ceil(k * pitch + start)).filter(
    () => next() < 1 / 3,
  );
}

describe('a grid on which all the places lie', () => {
  it('is found, though most of its points have none', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.integer({ min: 1, max: 9999 }),
        (pitch, seed) => {
          expect(Math.abs(findPixelGrid(changesOf(pitch, seed), MOST)! / pitch - 1)).toBeLessThan(0.005);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it('is none of a pitch of 2 under every place, and none under places of chance', () => {
    expect(
      findPixelGrid(
        Array.from({ length: 300 }, (_, i) => i),
        2,
      ),
    ).toBeNull();
    for (let seed = 1; seed < 200; seed += 1) {
      const next = seededNumbers(seed);
      let place = 0;
      const places = Array.from({ length: 40 }, () => {
        place += 3 + Math.floor(4 * next());
        return place;
      });
      expect(findPixelGrid(places, 4)).toBeNull();
    }
  });

  it('has one place at each point, though rounding a half may go either way', () => {
    const ends = Array.from({ length: 60 }, (_, k) => 2.5 * k);
    expect(findPixelGrid(ends.map(Math.floor), MOST)).toBeCloseTo(2.5, 1);
    const eitherWay = ends.map((end, k) => (k % 4 === 1 ? Math.ceil(end) : Math.floor(end)));
    expect(findPixelGrid(eitherWay, MOST)).toBeCloseTo(2.5, 1);
    const both = [...new Set(ends.flatMap((end) => [Math.floor(end), Math.ceil(end)]))];
    expect(findPixelGrid(both, MOST)).toBeNull();
  });

  it('is not believed of so few places that chance may put them there', () => {
    const few = changesOf(3, 7).slice(0, 14);
    expect(few.length * Math.log(3)).toBeLessThan(Math.log(1e7));
    expect(findPixelGrid(few, MOST)).not.toBeCloseTo(3, 1);
    expect(findPixelGrid([5], MOST)).toBeNull();
  });
});
