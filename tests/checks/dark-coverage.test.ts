import { describe, expect, it } from 'vitest';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { paintRaster } from '../pictures.ts';
import { codesOf, deepen, factsOf, judgeColours, onlyFinding, paintRgb } from './colour-jobs.ts';

type Rgb = readonly [number, number, number];
const gray = (code: number): Rgb => [code, code, code];
/** Stripes of 0.5 mm in two grays, `widthPx` x `heightPx`, on a mid gray of 90 x 90 mm. */
const stripes = (low: number, high: number, widthPx: number, heightPx: number) =>
  paintRgb(900, 900, (x, y) =>
    x >= 100 && y >= 100 && x < 100 + widthPx && y < 100 + heightPx
      ? gray(Math.floor(x / 5) % 2 === 0 ? low : high)
      : gray(128),
  );

describe('shadow-merge', () => {
  // The colour engine's tables: neutral codes 0 to 22 print within 0.5 L* of black on the reference.
  it('codes 0 and 20 print as one tone', async () => {
    const finding = onlyFinding((await judgeColours(stripes(0, 20, 100, 100))).dark);
    expect([finding.code, finding.severity]).toEqual(['shadow-merge', 'advice']);
    expect(finding.place!.px).toEqual({ x: 100, y: 100, width: 100, height: 100 });
    expect(finding.facts.largestMm2).toBeCloseTo(100, 6);
    expect(finding.facts.sharePercent).toBeCloseTo((100 * 10_000) / 810_000, 9);
    expect(finding.facts.conversion).toContain('without black point compensation');
    expect(finding.facts.printedBlackLightness).toBeCloseTo(8.97, 2);
  });

  it('codes that stay apart in print are none, nor is one tone, nor steps under 1 L*', async () => {
    expect((await judgeColours(stripes(26, 40, 200, 200))).dark.status).toBe('passed');
    expect((await judgeColours(stripes(10, 10, 200, 200))).dark.status).toBe('passed');
    // L* 0 and 0.82
    expect((await judgeColours(stripes(0, 3, 200, 200))).dark.status).toBe('passed');
    // L* 0 and 1.10
    expect((await judgeColours(stripes(0, 4, 200, 200))).dark.status).toBe('found');
  });

  it('counts detail only where it is: a great black area with a gray corner is mostly black', async () => {
    const raster = paintRgb(400, 400, (x, y) => gray(x < 100 && y < 100 && (x + y) % 10 < 5 ? 20 : 0));
    const { facts } = onlyFinding((await judgeColours(raster)).dark);
    expect(Number(facts.largestMm2)).toBeGreaterThan(100);
    expect(Number(facts.largestMm2)).toBeLessThan(130 * 1.3);
  });

  it.each([
    [49, []],
    [50, ['shadow-merge:advice']],
  ])('25 mm2 are 50 x 50 px: 50 x %d', async (heightPx, codes) => {
    expect(codesOf((await judgeColours(stripes(0, 20, 50, heightPx))).dark)).toEqual(codes);
  });

  it('is no matter of the soft rim of a black shape on light ground', async () => {
    // A black bar of 30 mm whose rims fade over 5 mm, as enlarged lettering has them.
    const ramp = (x: number) => Math.min(255, Math.max(0, (Math.abs(x - 450) - 150) * 5));
    const { dark } = await judgeColours(paintRgb(900, 900, (x) => gray(ramp(x))));
    expect(codesOf(dark)).toEqual(['large-dark:advice']);
  });

  it('is a warning under the profile of a printer', async () => {
    const condition = { ...(await loadCondition('coated-reference')), reference: false };
    const { dark } = await judgeColours(stripes(0, 20, 100, 100), { condition });
    expect(codesOf(dark)).toEqual(['shadow-merge:warning']);
  });

  it('is the same in 16 bits', async () => {
    const raster = stripes(0, 20, 100, 100);
    expect((await judgeColours(deepen(raster))).dark).toEqual((await judgeColours(raster)).dark);
  });

  it('does not look under alpha 0', async () => {
    const raster = paintRaster(200, 200, (x) =>
      x < 100 ? [x % 10 < 5 ? 20 : 0, 0, 0, 0] : [128, 128, 128, 255],
    );
    expect((await judgeColours(raster)).dark.status).toBe('passed');
  });
});

describe('large-dark', () => {
  const square = (code: number, widthPx: number, heightPx: number) =>
    paintRgb(900, 900, (x, y) => gray(x < widthPx && y >= 900 - heightPx ? code : 128));

  // L* of neutral sRGB (IEC 61966-2-1, CIE 15): code 31 is 11.27, code 33 is 12.25.
  it.each([
    [31, ['large-dark:advice']],
    [33, []],
  ])('L* 12 lies between codes 31 and 33: %d', async (code, codes) => {
    expect(codesOf((await judgeColours(square(code, 600, 600))).dark)).toEqual(codes);
  });

  it.each([
    [499, []],
    [500, ['large-dark:advice']],
  ])('25 cm2 are 500 x 500 px: 500 x %d', async (heightPx, codes) => {
    expect(codesOf((await judgeColours(square(5, 500, heightPx))).dark)).toEqual(codes);
  });

  it('two areas that do not touch are not one', async () => {
    const raster = paintRgb(900, 900, (x) => gray(x < 250 || x >= 650 ? 5 : 128));
    expect(codesOf((await judgeColours(raster)).dark)).toEqual([]);
    const { facts } = onlyFinding(
      (await judgeColours(paintRgb(900, 900, (x) => gray(x === 450 ? 128 : 5)))).dark,
    );
    expect(facts).toMatchObject({ regions: 2, largestMm2: expect.closeTo(4050, 3) });
  });

  it('stands beside lost shadows', async () => {
    const raster = paintRgb(600, 600, (x, y) => gray(Math.floor((x + y) / 5) % 2 === 0 ? 0 : 20));
    expect(codesOf((await judgeColours(raster)).dark)).toEqual(['shadow-merge:advice', 'large-dark:advice']);
  });

  it('thin black is gray: alpha counts as it prints', async () => {
    const { dark } = await judgeColours(paintRaster(600, 600, () => [0, 0, 0, 200]));
    expect(dark.status).toBe('passed');
    expect(factsOf(dark)).toEqual({});
  });
});
