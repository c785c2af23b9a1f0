import { describe, expect, it } from 'vitest';
import { findBlankFaults } from '../../src/catalogue/blank-faults.ts';
import { findFamily } from '../../src/catalogue/catalogue.ts';
import { developWrap, isTapered } from '../../src/catalogue/flat-size.ts';
import type { BlankRecord, HoleRecord, WrapRecord } from '../../src/catalogue/records.ts';
import { MM_PER_INCH } from '../../src/geometry/length.ts';
import { distanceInside } from '../../src/geometry/signed-distance.ts';
import { findOutlineInHand } from '../../src/job/outline-in-hand.ts';
import { blankFile } from './seed-files.ts';

const { blanks } = blankFile;
const flats = blanks.filter(({ outline }) => outline);
const wraps = blanks.filter((blank): blank is BlankRecord & { wrap: WrapRecord } => blank.wrap !== undefined);

describe('blanks', () => {
  it.each(blanks.map((blank) => [blank.id, blank] as const))('%s does not contradict itself', (_, blank) => {
    expect(findBlankFaults(blank)).toEqual([]);
    expect([blank.outline, blank.wrap].filter((body) => body).length).toBe(1);
  });

  it('are nearly as large as their names say', () => {
    // ANSI A137.1 (public summary) lets a tile be up to 3 % off the size in its name; other articles are cut closer.
    const named = blanks.flatMap((blank) => {
      const [, first, second] = /(\d+(?:\.\d+)?)(?: x (\d+(?:\.\d+)?))? in\b/.exec(blank.name) ?? [];
      return first && blank.outline
        ? [{ ...blank.outline, first, second: second ?? first, id: blank.id }]
        : [];
    });
    expect(named.length).toBeGreaterThan(15);
    for (const { id, widthMm, heightMm, first, second } of named) {
      for (const [mm, inches] of [
        [widthMm, Number(first)],
        [heightMm, Number(second)],
      ] as const) {
        expect(Math.abs(mm / (inches * MM_PER_INCH) - 1), id).toBeLessThanOrEqual(0.03);
      }
    }
  });

  it('keep a safe area, and a stroke that fits in it', () => {
    for (const blank of flats) {
      const { widthMm, heightMm } = blank.printable ?? blank.outline!;
      const stroke = blank.smallestStrokeMm ?? findFamily(blank.family!)?.smallestStrokeMm;
      expect(stroke, blank.id).toBeDefined();
      expect(Math.min(widthMm, heightMm) - 2 * blank.safeMm!, blank.id).toBeGreaterThan(stroke!.reversed);
      expect(stroke!.reversed, blank.id).toBeGreaterThan(stroke!.positive);
    }
  });

  it('say their base colour where bare wood shows, and only there', () => {
    const tinted = blanks.filter(({ baseColour }) => baseColour !== undefined);
    expect(tinted).toEqual(blanks.filter(({ family }) => family === 'coated-wood'));
  });
});

describe('holes', () => {
  const holes = flats.flatMap((blank) => (blank.holes ?? []).map((hole) => [blank, hole] as const));

  it.each(holes.map(([blank, hole]) => [blank.id, hole.use, blank, hole] as const))(
    '%s: the %s lies in the outline, a notch on its edge',
    (_, use, blank, hole) => {
      const { outline } = findOutlineInHand(blank);
      const inside = distanceInside(outline, hole.xMm, hole.yMm);
      if (use === 'notch') expect(Math.abs(inside)).toBeLessThan(0.01);
      else expect(inside).toBeGreaterThan(halfLengthOf(hole));
    },
  );

  it('are plausible: ring and hang holes 3 to 5 mm (common practice, no source)', () => {
    const small = holes.filter(([, { use }]) => use === 'ring' || use === 'hang');
    expect(small.length).toBeGreaterThan(5);
    for (const [blank, hole] of small) {
      expect(hole.shape, blank.id).toBe('circle');
      expect(halfLengthOf(hole) * 2, blank.id).toBeGreaterThanOrEqual(3);
      expect(halfLengthOf(hole) * 2, blank.id).toBeLessThanOrEqual(5);
    }
  });
});

describe('wraps', () => {
  it('are fourteen, six of them tapered', () => {
    expect(wraps.length).toBe(14);
    expect(wraps.filter(({ wrap }) => isTapered(wrap)).length).toBe(6);
  });

  // Worked by hand from pi x D (common practice, no source for the diameters).
  it.each([
    ['mug-11oz', 215.9, 88.9],
    ['mug-15oz', 228.6, 106.7],
    ['tumbler-20oz-straight', 235.5, 208.3],
    ['tumbler-30oz-straight', 259.0, 238],
    ['bottle-waisted-17oz', 190.5, 88.9],
  ])('%s unrolls to %f x %f mm', (id, widthMm, heightMm) => {
    const flat = developWrap(wraps.find((blank) => blank.id === id)!.wrap);
    expect(Math.abs(flat.widthMm - widthMm)).toBeLessThan(0.06);
    expect(flat.heightMm).toBe(heightMm);
  });

  it.each(wraps.map((blank) => [blank.id, blank] as const))(
    '%s is plausible',
    (_, { wrap, family, bleedMm }) => {
      const { topDiameterMm, bottomDiameterMm, bodyHeightMm, printHeightMm } = wrap;
      expect(bleedMm).toBe(0);
      expect(topDiameterMm).toBeGreaterThanOrEqual(bottomDiameterMm);
      expect(topDiameterMm).toBeLessThan(110);
      expect(bottomDiameterMm).toBeGreaterThan(40);
      expect(printHeightMm).toBeGreaterThan(bodyHeightMm / 2);
      // Seams overlap by 2 to 5 mm; what a press leaves at a handle is 22 to 45 mm (common practice, no source).
      if (wrap.overlapMm !== undefined) expect(wrap.overlapMm >= 2 && wrap.overlapMm <= 5).toBe(true);
      if (wrap.handleGapMm !== undefined) expect(wrap.handleGapMm >= 22 && wrap.handleGapMm <= 45).toBe(true);
      const { heightPlusMinusMm } = findFamily(family!)!.tolerance;
      expect(wrap.highestPrintMm ?? 0).toBeLessThanOrEqual(bodyHeightMm + heightPlusMinusMm!.max);
      expect(wrap.widestPrintMm ?? 0).toBeLessThan(Math.PI * topDiameterMm);
    },
  );
});

/** Half the longer side: a circle of it holds the hole. */
function halfLengthOf(hole: HoleRecord): number {
  return hole.shape === 'circle' ? hole.diameterMm / 2 : Math.max(hole.widthMm, hole.heightMm) / 2;
}
