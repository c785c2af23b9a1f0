import { describe, expect, it } from 'vitest';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { CLEAR, GREEN, paintRaster, type Rgba, WHITE } from '../pictures.ts';
import { findingsOf, outcomesOf, PLATE } from './jobs.ts';

const HOLE: BlankRecord = {
  ...PLATE,
  holes: [{ use: 'hang', shape: 'circle', xMm: 50, yMm: 12, diameterMm: 4 }],
};

/** 10 px a millimetre over the whole plate; the rim holds the content box in place with a pixel of alpha 1. */
const onPlate = (paint: (xMm: number, yMm: number) => Rgba, blank = HOLE) =>
  outcomesOf(
    paintRaster(1000, 1000, (x, y) =>
      x === 0 || y === 0 || x === 999 || y === 999 ? [1, 1, 1, 1] : paint((x + 0.5) / 10, (y + 0.5) / 10),
    ),
    { blank, widthMm: 100 },
  );

const codes = (outcomes: ReturnType<typeof outcomesOf>) =>
  findingsOf(outcomes, 'keep-out').map(({ code, severity }) => `${code}:${severity}`);

describe('keep-out: a hole of 4 mm at 50, 12 mm, so a zone of 10 mm across', () => {
  it('art that ends where the zone begins passes, a tenth further does not', () => {
    expect(codes(onPlate((_, y) => (y > 17 ? GREEN : CLEAR)))).toEqual([]);
    expect(codes(onPlate((_, y) => (y > 16.8 ? GREEN : CLEAR)))).toEqual(['under-hole:warning']);
  });

  it('a background that covers all of it is advice', () =>
    expect(codes(onPlate(() => GREEN))).toEqual(['under-hole:advice']));

  it('half covered: the share and the place are those of the zone', () => {
    const [found] = findingsOf(
      onPlate((x) => (x > 50 ? GREEN : CLEAR)),
      'keep-out',
    );
    expect(found!.actual!.value).toBe(50);
    expect(found!.place!.mm).toEqual({ x: 45, y: 7, width: 10, height: 10 });
    expect(found!.place!.px).toEqual({ x: 450, y: 70, width: 100, height: 100 });
  });

  it('pure white over a white base is no art there', () => expect(codes(onPlate(() => WHITE))).toEqual([]));

  it('even the faintest visible pixel is art', () =>
    expect(codes(onPlate((x, y) => (Math.hypot(x - 50, y - 12) < 1 ? [10, 10, 10, 1] : CLEAR)))).toEqual([
      'under-hole:warning',
    ]));

  it('two holes are two findings', () => {
    const two: BlankRecord = {
      ...PLATE,
      holes: [...HOLE.holes!, { use: 'slot', shape: 'slot', xMm: 50, yMm: 80, widthMm: 12, heightMm: 4 }],
    };
    expect(codes(onPlate((x, y) => (x > 50 && y > 10 ? GREEN : CLEAR), two))).toEqual([
      'under-hole:warning',
      'under-hole:warning',
    ]);
  });
});

describe('keep-out names the size and the offset that would clear the hole', () => {
  // A block of 60 x 60 mm whose upper rim, at y = 14, lies 3 mm inside the zone, which ends at y = 17.
  const art = paintRaster(600, 600, () => GREEN);
  const place = { blank: HOLE, widthMm: 60, offsetMm: { x: 0, y: -6 } };
  const [found] = findingsOf(outcomesOf(art, place), 'keep-out');

  it('the offset clears it', () => {
    expect(found!.facts).toMatchObject({ offsetXMm: 0, offsetYMm: -3 });
    const moved = outcomesOf(art, {
      ...place,
      offsetMm: { x: Number(found!.facts.offsetXMm), y: Number(found!.facts.offsetYMm) },
    });
    expect(codes(moved)).toEqual([]);
  });

  it('the size clears it, and it is within a percent of the exact one', () => {
    // About the middle at y = 44 the rim must come down from 30 to 27 mm: 54 mm.
    expect(found!.facts.widthToClearMm).toBeCloseTo(54, 6);
    expect(codes(outcomesOf(art, { ...place, widthMm: Number(found!.facts.widthToClearMm) }))).toEqual([]);
  });

  it.each([30, 34.7, 41.3, 52.9, 60.1])(
    'a ragged rim %d mm wide is clear at the size and the offset named',
    (widthMm) => {
      const ragged = paintRaster(900, 900, (x, y) =>
        Math.hypot(x - 450, y - 450) < 380 + 60 * Math.sin(9 * Math.atan2(y - 450, x - 450)) ? GREEN : CLEAR,
      );
      const there = { blank: HOLE, widthMm, offsetMm: { x: 1, y: -39 + widthMm / 2 } };
      const [over] = findingsOf(outcomesOf(ragged, there), 'keep-out');
      const { widthToClearMm, offsetXMm, offsetYMm } = over!.facts;
      expect(widthToClearMm).toBeLessThan(widthMm);
      expect(codes(outcomesOf(ragged, { ...there, widthMm: Number(widthToClearMm) }))).toEqual([]);
      if (offsetXMm === undefined) return;
      const offsetMm = { x: Number(offsetXMm), y: Number(offsetYMm) };
      expect(codes(outcomesOf(ragged, { ...there, offsetMm }))).toEqual([]);
    },
  );

  it('promises nothing where nothing would do', () => {
    const middle: BlankRecord = {
      ...PLATE,
      holes: [{ use: 'centre', shape: 'circle', xMm: 50, yMm: 50, diameterMm: 10 }],
    };
    const ring = paintRaster(400, 400, (x, y) =>
      Math.hypot(x - 200, y - 200) < 199 && (x + y) % 3 > 0 ? GREEN : CLEAR,
    );
    const [around] = findingsOf(outcomesOf(ring, { blank: middle, widthMm: 80 }), 'keep-out');
    expect(around!.facts).toEqual({ use: 'centre', keepOutMm: 3 });
  });
});
