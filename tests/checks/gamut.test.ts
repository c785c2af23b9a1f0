import { describe, expect, it } from 'vitest';
import { gamutTableOf } from '../../src/conditions/colour-tables.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeSrgbTransform } from '../../src/icc/srgb-transform.ts';
import { readReferenceTable } from '../colour/reference-table.ts';
import { CLEAR, paintRaster, type Rgba } from '../pictures.ts';
import { codesOf, deepen, factsOf, judgeColours, onlyFinding, paintRgb } from './colour-jobs.ts';
import { wideProfile } from './wide-profile.ts';

const EARTH = [120, 95, 75] as const;
const VIVID = [0, 255, 0] as const;
const ADVICE = ['out-of-gamut:advice'];

/** `over` pixels of full green among 10 000 of earth, one by one so that no region grows. */
const scattered = (over: number) =>
  paintRgb(200, 200, (x, y) => (x % 2 === 0 && y % 2 === 0 && (y / 2) * 100 + x / 2 < over ? VIVID : EARTH));
/** A block of full green, 10 px wide, on 400 x 400 px of earth. */
const block = (pixels: number, size = 400) =>
  paintRgb(size, size, (x, y) =>
    x >= 50 && x < 60 && y >= 20 && (y - 20) * 10 + (x - 50) < pixels ? VIVID : EARTH,
  );

describe('gamut', () => {
  it('earth colours pass, and the pass says by what it was judged', async () => {
    const { gamut } = await judgeColours(paintRgb(100, 100, () => EARTH));
    expect(gamut.status).toBe('passed');
    expect(factsOf(gamut)).toMatchObject({
      sharePercent: 0,
      shareOver5Percent: 0,
      limitDeltaE: 3,
      condition: 'coated-reference',
      reference: true,
      attribution: expect.stringContaining('TR 006'),
    });
  });

  it('is a warning under the profile of a printer, advice under the reference', async () => {
    const reference = await loadCondition('coated-reference');
    const raster = paintRgb(100, 100, () => VIVID);
    expect(codesOf((await judgeColours(raster)).gamut)).toEqual(ADVICE);
    const own = { ...reference, id: 'mine.icc', name: 'Mine', reference: false, attribution: null };
    const { gamut } = await judgeColours(raster, { condition: own });
    expect(codesOf(gamut)).toEqual(['out-of-gamut:warning']);
    expect(factsOf(gamut)).not.toHaveProperty('attribution');
  });

  it.each([
    [399, []],
    [400, ADVICE],
    [401, ADVICE],
  ])('1 %% is 400 of 40 000 pixels: %d scattered', async (over, codes) => {
    const { gamut } = await judgeColours(scattered(over));
    expect(codesOf(gamut)).toEqual(codes);
    expect(factsOf(gamut).sharePercent).toBeCloseTo(over / 400, 9);
  });

  // 1 % of 160 000 pixels would be 1600; with 600 x 600 px, 2500 px are under 1 %.
  it.each([
    [2490, []],
    [2500, ADVICE],
    [2510, ADVICE],
  ])('25 mm2 are 2500 pixels in one piece: %d', async (pixels, codes) => {
    const { gamut } = await judgeColours(block(pixels, 600));
    expect(codesOf(gamut)).toEqual(codes);
    if (codes.length > 0) expect(factsOf(gamut).largestMm2).toBe(pixels / 100);
  });

  it('says where the largest piece lies, on the blank and in the art', async () => {
    const { place, actual, expected, facts } = onlyFinding((await judgeColours(block(2500, 600))).gamut);
    // 60 mm of art in the middle of a plate of 100 mm: its corner is at 20, 20.
    expect(place!.px).toEqual({ x: 50, y: 20, width: 10, height: 250 });
    expect(place!.mm.x).toBeCloseTo(25, 1);
    expect(place!.mm.y).toBeCloseTo(22, 1);
    expect(place!.mm.width).toBeCloseTo(1, 9);
    expect(actual).toEqual({ value: facts.largestMm2, unit: 'mm2' });
    expect(expected).toEqual({ max: 25, unit: 'mm2', from: 'practice:gamut-region' });
  });

  it('tells the colours that change: exactly, the most common first, with what they become', async () => {
    const colours = [VIVID, [0, 0, 255], [255, 0, 255], EARTH] as const;
    const raster = paintRgb(100, 100, (x) => colours[x < 40 ? 0 : x < 70 ? 1 : x < 90 ? 2 : 3]!);
    const { facts } = onlyFinding((await judgeColours(raster)).gamut);
    const table = gamutTableOf((await loadCondition('coated-reference')).profile, SRGB_PROFILE);
    expect(facts.changes).toMatchObject([
      { colour: '#00ff00', name: 'bright green', sharePercent: 40, deltaE: table.measure([0, 1, 0]) },
      { colour: '#0000ff', sharePercent: 30, deltaE: table.measure([0, 0, 1]) },
      { colour: '#ff00ff', sharePercent: 20, deltaE: table.measure([1, 0, 1]) },
    ]);
    expect(facts.kinds).toMatch(/^bright greens, /);
    expect(facts.sharePercent).toBe(90);
    expect(facts.shareOver5Percent).toBe(90);
  });

  it('tells at most ten', async () => {
    const raster = paintRgb(200, 100, (x) => [
      0,
      255 - 8 * Math.floor(x / 10),
      255 * (Math.floor(x / 10) % 2),
    ]);
    expect(onlyFinding((await judgeColours(raster)).gamut).facts.changes).toHaveLength(10);
  });
});

describe('gamut judges what is printed', () => {
  const withAlpha = (paint: (x: number) => Rgba) => paintRaster(100, 100, paint);

  it('not what alpha hides', async () => {
    const { gamut } = await judgeColours(withAlpha((x) => (x < 50 ? [...EARTH, 255] : [0, 255, 0, 0])));
    expect(factsOf(gamut).sharePercent).toBe(0);
    const half = await judgeColours(
      withAlpha((x) => (x < 50 ? [...VIVID, 255] : x < 98 ? CLEAR : [...EARTH, 255])),
    );
    expect(factsOf(half.gamut).sharePercent).toBeCloseTo((100 * 50) / 52, 9);
  });

  it('over white where alpha is partial: thin green is pale green', async () => {
    const thin = await judgeColours(withAlpha(() => [0, 255, 0, 26]));
    const same = await judgeColours(paintRgb(100, 100, () => [229, 255, 229]));
    expect(factsOf(thin.gamut)).toEqual(factsOf(same.gamut));
  });

  it('in 16 bits as in 8, and gray as red = green = blue', async () => {
    const raster = paintRgb(100, 100, (x) => [2 * x, 255 - x, x]);
    expect((await judgeColours(deepen(raster))).gamut).toEqual((await judgeColours(raster)).gamut);
    const gray = {
      ...paintRgb(100, 100, () => EARTH),
      model: 'gray',
      data: new Uint8Array(10_000).fill(90),
    } as const;
    expect((await judgeColours(gray)).gamut.status).toBe('passed');
    expect((await judgeColours(deepen(gray))).gamut.status).toBe('passed');
  });

  it('nothing, where nothing is visible', async () => {
    const { gamut, dark } = await judgeColours(withAlpha(() => [0, 255, 0, 0]));
    expect([gamut.status, dark.status]).toEqual(['skipped', 'skipped']);
  });

  it('wide-gamut art before it is clipped to sRGB', async () => {
    const profile = wideProfile();
    const ownColours: Artwork['ownColours'] = { name: 'wide', profile, toSrgb: makeSrgbTransform(profile) };
    const raster = paintRgb(100, 100, () => [0, 255, 0]);
    const deltaE = (facts: ReturnType<typeof factsOf>) =>
      (facts.changes as readonly { deltaE: number }[])[0]!.deltaE;
    const wide = factsOf((await judgeColours(raster, { ownColours })).gamut);
    const plain = factsOf((await judgeColours(raster)).gamut);
    expect(deltaE(wide)).toBeGreaterThan(deltaE(plain) + 2);
  });
});

/** fixtures/reference/gamut-truth.tsv: the distance to the printable gamut, searched for through the forward table. */
describe('gamut against the true gamut of the reference condition, a patch for each row', async () => {
  const rows = readReferenceTable('gamut-truth.tsv').map((row) => ({
    rgb: row.triple('R', 'G', 'B') as readonly [number, number, number],
    truth: row.number('bpc_min'),
  }));
  const verdicts = await Promise.all(
    rows.map(async ({ rgb, truth }) => ({
      rgb,
      truth,
      found: (await judgeColours(paintRgb(50, 50, () => rgb))).gamut.status === 'found',
    })),
  );

  it('misses none over the limit', () => {
    expect(verdicts.filter(({ truth, found }) => truth > 3 && !found)).toEqual([]);
  });

  // 3 % are allowed to an inverse that is refined on the forward table.
  it('flags at most 3 in 100 that can be printed', () => {
    const inside = verdicts.filter(({ truth }) => truth <= 0.5);
    expect(inside.length).toBeGreaterThan(100);
    expect(inside.filter(({ found }) => found).length / inside.length).toBeLessThanOrEqual(0.03);
  });
});
