import { describe, expect, it } from 'vitest';
import { defaultFamily, listBlanks, listFamilies } from '../../src/catalogue/catalogue.ts';
import { MM_PER_INCH } from '../../src/geometry/length.ts';

/**
 * Defaults of the families, written down apart from the seeds: placement, bleed, safe inset in mm; ppi good, acceptable,
 * stop below; viewing distance in inches; smallest stroke dark on white and white on dark in mm.
 * Bleed and inset up to 6.35 mm and the ppi are common practice, the rest is recalled; no published source.
 */
const TABLE = `
ceramic-tile        1.5  3  5   300 220 150  12  0.25 0.5
ceramic-small       1    3  4   300 220 150  10  0.25 0.5
stone-slate         2    3  10  240 180 120  18  0.5  1
hardboard           1    3  4   300 220 150  12  0.25 0.5
coated-wood         1    3  5   240 180 120  14  0.5  1
aluminium           1    3  4   300 220 150  12  0.25 0.5
aluminium-large     2    5  8   240 180 120  30  0.25 0.5
frp-plastic         1    3  4   300 220 150  12  0.25 0.5
glass-flat          1    3  6   300 220 150  14  0.25 0.5
neoprene            1.5  4  6   240 180 120  16  0.5  1
polyester-fabric    3    10 20  200 150 100  24  0.5  1
puzzle              1    4  6   240 180 120  14  0.25 0.5
ceramic-mug         1.5  0  6   300 220 150  12  0.25 0.5
stainless-drinkware 1    0  6   300 220 150  12  0.25 0.5
glass-drinkware     1    0  6   300 220 150  12  0.25 0.5
`
  .trim()
  .split('\n')
  .map((line) => line.trim().split(/ +/));

/** Nominal-to-actual, plus or minus: sizes of flat families, diameters and heights of round ones; mm. */
const TOLERANCES: Readonly<Record<string, object>> = {
  'ceramic-tile': { sizePlusMinusMm: { min: 1, max: 1.5 } },
  'ceramic-small': { sizePlusMinusMm: { min: 1, max: 1 } },
  'stone-slate': { sizePlusMinusMm: { min: 3, max: 5 } },
  hardboard: { sizePlusMinusMm: { min: 0.5, max: 0.5 } },
  'coated-wood': { sizePlusMinusMm: { min: 0.8, max: 0.8 } },
  aluminium: { sizePlusMinusMm: { min: 0.4, max: 0.4 } },
  'aluminium-large': { sizePlusMinusMm: { min: 0.8, max: 0.8 } },
  'frp-plastic': { sizePlusMinusMm: { min: 0.5, max: 0.5 } },
  'glass-flat': { sizePlusMinusMm: { min: 1, max: 1 } },
  neoprene: { sizePlusMinusMm: { min: 2, max: 2 } },
  'polyester-fabric': { sizePlusMinusMm: { min: 5, max: 10 }, heatShrinkPercent: { min: 1, max: 3 } },
  puzzle: { sizePlusMinusMm: { min: 0.8, max: 0.8 } },
  'ceramic-mug': round(1, 1.5, 3, 5, 1.5),
  'stainless-drinkware': round(0.3, 0.5, 1, 1.6, 1),
  'glass-drinkware': round(0.8, 0.8, 2.5, 2.5, 1.5),
};

function round(dMin: number, dMax: number, cMin: number, cMax: number, height: number): object {
  return {
    diameterPlusMinusMm: { min: dMin, max: dMax },
    circumferencePlusMinusMm: { min: cMin, max: cMax },
    heightPlusMinusMm: { min: height, max: height },
  };
}

describe('the table of families', () => {
  it('has every family of the seeds, once', () => {
    expect(TABLE.map(([id]) => id).sort()).toEqual(listFamilies().map(({ id }) => id));
  });

  it.each(TABLE.map(([id, ...cells]) => [id!, cells.map(Number)] as const))('%s', (id, cells) => {
    const family = listFamilies().find((record) => record.id === id)!;
    const { good, acceptable, stopBelow } = family.resolutionPpi;
    const { positive, reversed } = family.smallestStrokeMm!;
    const { placementPlusMinusMm, bleedMm, safeMm, viewDistanceIn } = family;
    expect([placementPlusMinusMm, bleedMm, safeMm]).toEqual(cells.slice(0, 3));
    expect([good, acceptable, stopBelow]).toEqual(cells.slice(3, 6));
    expect([viewDistanceIn, positive, reversed]).toEqual(cells.slice(6));
    expect(family.tolerance).toEqual(TOLERANCES[id]);
    expect(family.viewDistanceMm).toBe(Math.round(viewDistanceIn * MM_PER_INCH));
  });

  it('has circumferences that follow from the diameters', () => {
    for (const { id, tolerance } of listFamilies()) {
      const { diameterPlusMinusMm: diameter, circumferencePlusMinusMm: around } = tolerance;
      if (!diameter || !around) continue;
      // Written to half a millimetre where it is wider than 2 mm, to a tenth below: 0.3 of slack covers both.
      expect(Math.abs(around.min - Math.PI * diameter.min), id).toBeLessThanOrEqual(0.3);
      expect(Math.abs(around.max - Math.PI * diameter.max), id).toBeLessThanOrEqual(0.3);
    }
  });

  it('lets 18 blanks override the bleed or the safe inset of their family', () => {
    const families = new Map(listFamilies().map((family) => [family.id, family]));
    const own = listBlanks().filter(({ family, bleedMm, safeMm }) => {
      const defaults = families.get(family!)!;
      return bleedMm !== defaults.bleedMm || safeMm !== defaults.safeMm;
    });
    expect(own.length).toBe(18);
  });

  it('marks one default: 300, 220, 150 ppi, bleed 3 mm, safe 5 mm', () => {
    expect(listFamilies().filter((family) => family.default)).toEqual([defaultFamily]);
    expect(defaultFamily.id).toBe('ceramic-tile');
    expect([defaultFamily.bleedMm, defaultFamily.safeMm]).toEqual([3, 5]);
    expect(defaultFamily.resolutionPpi).toEqual({ good: 300, acceptable: 220, stopBelow: 150 });
  });
});
