import { describe, expect, it } from 'vitest';
import { blockRaster, CLEAR, GREEN, paintRaster, type Rgba, WHITE } from '../pictures.ts';
import { codesOf, DISC, findingsOf, outcomesOf, PLATE } from './jobs.ts';

/** 10 px a millimetre: a canvas of 120 x 120 mm round the plate, so that the plate's edge lies at px 100 and 1100. */
const onPlate = (paint: (xMm: number, yMm: number) => Rgba, blank = PLATE) =>
  outcomesOf(
    paintRaster(1200, 1200, (x, y) =>
      x === 0 || y === 0 || x === 1199 || y === 1199
        ? [1, 1, 1, 1]
        : paint((x + 0.5) / 10 - 10, (y + 0.5) / 10 - 10),
    ),
    // One faint pixel row on the rim keeps the content box, and with it the placement, the whole canvas.
    { blank, widthMm: 120 },
  ).filter(({ check }) => check === 'bleed-cover' || check === 'safe-area');

const square = (halfMm: number) => (x: number, y: number) =>
  Math.max(Math.abs(x - 50), Math.abs(y - 50)) < halfMm ? GREEN : CLEAR;
const disc = (radiusMm: number) => (x: number, y: number) =>
  Math.hypot(x - 50, y - 50) < radiusMm ? GREEN : CLEAR;

describe('bleed-cover and safe-area on a plate of 100 mm, bleed 3, safe 5', () => {
  it.each([
    ['well inside', 40, []],
    ['ends exactly on the safe line', 45, []],
    ['a tenth beyond the safe line', 45.1, ['safe-area/too-close:warning']],
    ['a tenth short of the edge', 49.9, ['safe-area/too-close:warning']],
    ['ends exactly on the edge', 50, ['bleed-cover/short:error']],
    ['a tenth short of the bleed line', 52.9, ['bleed-cover/short:error']],
    ['ends exactly on the bleed line', 53, []],
    ['beyond the bleed line', 55, []],
  ])('a square that %s (%d mm from the middle): %j', (_, half, codes) =>
    expect(codesOf(onPlate(square(half)))).toEqual(codes),
  );

  it('says how much and on which side', () => {
    const [short] = findingsOf(
      onPlate((x, y) => (x > -1.2 && x < 104 && y > -4 && y < 104 ? GREEN : CLEAR)),
      'bleed-cover',
    );
    expect(short!.actual).toEqual({ value: expect.closeTo(1.2, 9), unit: 'mm' });
    expect(short!.expected).toEqual({ min: 3, unit: 'mm', from: 'blank:test-plate' });
    // Along the fan of a corner 1.2 mm to the left is farther away, the more it leans: never less than 1.2 mm.
    expect(short!.facts.leftMm).toBeCloseTo(1.2, 9);
    expect(short!.facts.rightMm).toBeUndefined();
    expect([short!.facts.topMm, short!.facts.bottomMm]).toEqual([undefined, undefined]);
    expect(Number(short!.facts.cornersMm)).toBeGreaterThanOrEqual(1.2);
    expect(short!.facts.sharePercent).toBeCloseTo(25, 6);
    expect(short!.place!.mm.x).toBeCloseTo(-3, 9);
  });

  it('the clearance of art that ends inside the ring', () => {
    const [close] = findingsOf(onPlate(square(47.5)), 'safe-area');
    expect(close!.actual!.value).toBeCloseTo(2.5, 9);
    expect(close!.facts).toMatchObject({ leftMm: expect.closeTo(2.5, 9), bottomMm: expect.closeTo(2.5, 9) });
  });

  it('two findings at once: short on the left, too close at the top', () => {
    const codes = codesOf(onPlate((x, y) => (x > -1 && x < 45 && y > 2 && y < 95 ? GREEN : CLEAR)));
    expect(codes).toEqual(['bleed-cover/short:error', 'safe-area/too-close:warning']);
  });

  it('a missing corner of the bleed is found although all four sides are covered', () => {
    const notched = (x: number, y: number) => (x < -0.5 && y < -0.5 ? CLEAR : square(54)(x, y));
    const [short] = findingsOf(onPlate(notched), 'bleed-cover');
    expect(short!.actual!.value).toBeLessThan(1);
    expect(short!.facts.sharePercent).toBe(0);
  });

  it('beyond the round bleed line of a corner nothing is asked for', () => {
    const rounded = (x: number, y: number) =>
      Math.hypot(Math.max(0, -x, x - 100), Math.max(0, -y, y - 100)) < 3.05 ? GREEN : CLEAR;
    expect(codesOf(onPlate(rounded))).toEqual([]);
  });

  it('a glow below 50 % may fade in the ring, from 50 % on it is art', () => {
    const glow = (alpha: number) => (x: number, y: number) =>
      square(40)(x, y) === GREEN
        ? GREEN
        : square(48)(x, y) === GREEN
          ? ([40, 120, 60, alpha] as const)
          : CLEAR;
    expect(codesOf(onPlate(glow(127)))).toEqual([]);
    expect(codesOf(onPlate(glow(128)))).toEqual(['safe-area/too-close:warning']);
  });

  it('pure white over a white base is no art, 254 is', () => {
    const rim = (colour: Rgba) => (x: number, y: number) =>
      square(40)(x, y) === GREEN ? GREEN : square(48)(x, y) === GREEN ? colour : CLEAR;
    expect(codesOf(onPlate(rim(WHITE)))).toEqual([]);
    expect(codesOf(onPlate(rim([255, 255, 254, 255])))).toEqual(['safe-area/too-close:warning']);
    expect(codesOf(onPlate(rim(WHITE), { ...PLATE, baseColour: '#d9c7a0' }))).toEqual([
      'safe-area/too-close:warning',
    ]);
  });

  it('white beyond the edge is no bleed', () => {
    const whiteOutside = (x: number, y: number) => (square(50)(x, y) === GREEN ? GREEN : WHITE);
    expect(codesOf(onPlate(whiteOutside))).toEqual(['bleed-cover/short:error']);
  });

  it('a gap narrower than the walk is closed, a wider one ends the bleed', () => {
    const gap = (mm: number) => (x: number, y: number) =>
      x < -1 && x > -1 - mm && y > 20 && y < 80 ? CLEAR : square(54)(x, y);
    expect(codesOf(onPlate(gap(0.2)))).toEqual([]);
    expect(codesOf(onPlate(gap(0.5)))).toEqual(['bleed-cover/short:error']);
  });
});

describe('bleed-cover and safe-area follow a round edge', () => {
  it.each([
    ['inside the safe line', 44.9, []],
    ['in the ring', 47, ['safe-area/too-close:warning']],
    ['over the edge, short', 51, ['bleed-cover/short:error']],
    ['to the bleed line', 53.1, []],
  ])('a disc that ends %s (%d mm)', (_, radius, codes) =>
    expect(codesOf(onPlate(disc(radius), DISC))).toEqual(codes),
  );

  it('a square with its corners cut by the circle is short nowhere and close nowhere when it covers all', () => {
    expect(codesOf(onPlate(square(54), DISC))).toEqual([]);
  });
});

describe('art placed by --fit', () => {
  it('inside: touches the safe line and passes, on the plate and on the disc', () => {
    for (const blank of [PLATE, DISC])
      expect(
        codesOf(
          outcomesOf(blockRaster([1400, 1400], { x: 100, y: 100, width: 1200, height: 1200 }), { blank }),
        ),
      ).toEqual([]);
  });

  it('cover: reaches the bleed line and passes', () => {
    const codes = codesOf(
      outcomesOf(blockRaster([1400, 1300], { x: 0, y: 0, width: 1400, height: 1300 }), { fit: 'cover' }),
    );
    expect(codes).toEqual(['print-size/cut:advice']);
  });

  it('a blank without bleed and safe inset asks for nothing', () => {
    expect(codesOf(onPlate(square(50), { ...PLATE, bleedMm: 0, safeMm: 0 }))).toEqual([]);
  });
});

describe('the sizes that the remedies name', () => {
  const diamond = paintRaster(600, 600, (x, y) =>
    Math.abs(x + 0.5 - 300) + Math.abs(y + 0.5 - 300) < 299 ? GREEN : CLEAR,
  );
  const full = paintRaster(600, 600, () => GREEN);
  const find = (art: typeof full, request: Parameters<typeof outcomesOf>[1], check: string) =>
    findingsOf(outcomesOf(art, request), check)[0]!;
  const edgeCodes = (art: typeof full, request: Parameters<typeof outcomesOf>[1]) =>
    codesOf(outcomesOf(art, request).filter(({ check }) => check === 'bleed-cover' || check === 'safe-area'));

  it('the width and --fit cover that would close the bleed do close it', () => {
    const { facts } = find(full, { widthMm: 102 }, 'bleed-cover');
    expect(facts).toMatchObject({ widthToReachMm: 106, coverReaches: true });
    expect(edgeCodes(full, { widthMm: 106 })).toEqual([]);
    expect(edgeCodes(full, { fit: 'cover' })).toEqual([]);
  });

  it('none is named where the rim of the art leaves gaps at that size too', () => {
    for (const request of [{ widthMm: 110 }, { fit: 'cover' }] as const) {
      const { facts } = find(diamond, request, 'bleed-cover');
      expect(facts.widthToReachMm).toBeUndefined();
      expect(facts.coverReaches).toBe(false);
    }
  });

  it('the width that would clear the safe line clears it', () => {
    const { facts } = find(full, { widthMm: 97 }, 'safe-area');
    expect(facts.widthToClearMm).toBeGreaterThanOrEqual(90);
    expect(edgeCodes(full, { widthMm: Number(facts.widthToClearMm) })).toEqual([]);
  });

  it('says nothing of sides on which the art hangs over the bleed line: they have no border', () => {
    const sides = (widthMm: number) => {
      const outcomes = outcomesOf(diamond, { widthMm });
      return { safe: findingsOf(outcomes, 'safe-area').length, cut: findingsOf(outcomes, 'print-size')[0] };
    };
    expect(sides(140)).toMatchObject({ safe: 0, cut: { facts: { topMm: expect.closeTo(17, 6) } } });
    expect(sides(98)).toEqual({ safe: 1, cut: undefined });
  });

  it('a tenth of a millimetre more than that width is too close', () => {
    const { facts } = find(full, { widthMm: 97 }, 'safe-area');
    expect(edgeCodes(full, { widthMm: Number(facts.widthToClearMm) + 0.1 })).toEqual([
      'safe-area/too-close:warning',
    ]);
  });
});
