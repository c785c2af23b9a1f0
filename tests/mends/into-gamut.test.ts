import { converter, differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkArtwork } from '../../src/check-artwork.ts';
import { measureDeltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { gamutMapOf, gamutTableOf } from '../../src/conditions/colour-tables.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { UNITS_PER_DELTA_E } from '../../src/icc/gamut-table.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeSrgbTransform } from '../../src/icc/srgb-transform.ts';
import { mendArtwork, reportMends } from '../../src/mend-artwork.ts';
import intoGamut from '../../src/mends/into-gamut.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { codesOf, deepen, paintRgb } from '../checks/colour-jobs.ts';
import { PLATE } from '../checks/jobs.ts';
import { wideProfile } from '../checks/wide-profile.ts';
import { artworkOf, paintRaster } from '../pictures.ts';

const condition = await loadCondition('coated-reference');
const table = gamutTableOf(condition.profile, SRGB_PROFILE);
const map = gamutMapOf(condition.profile, SRGB_PROFILE)!;
const context = {
  source: SRGB_PROFILE,
  condition,
  conversion: null,
  job: () => null,
  extend: 'reflect',
} as const;
const mend = (raster: Raster) => intoGamut.apply(raster, context).raster;

/** Every colour of a grid over the cube of sRGB, 40 a side. */
const STEPS = 40;
const code = (i: number) => Math.round((i * 255) / (STEPS - 1));
const cube = paintRgb(STEPS * STEPS, STEPS, (x, y) => [
  code(x % STEPS),
  code(Math.floor(x / STEPS)),
  code(y),
]);

/** Pixels over the limit of the check, of an opaque 8-bit picture. */
function countOver({ data, widthPx, heightPx }: Raster): number {
  const differences = new Uint16Array(widthPx * heightPx);
  table.measure8(data as Uint8Array, differences, differences.length);
  return differences.filter((difference) => difference > table.limit * UNITS_PER_DELTA_E).length;
}

/** Hue in JzAzBz, a space made for hue by others and from other data. */
const hueOf = (rgb: readonly number[]) =>
  converter('jch')({ mode: 'rgb', r: rgb[0]!, g: rgb[1]!, b: rgb[2]! }).h ?? 0;
const hueTurn = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

describe('into-gamut over the cube of sRGB', () => {
  const mended = mend(cube);

  it('leaves nothing over the limit of the check, and what was within it exactly as it was', () => {
    expect(countOver(cube)).toBeGreaterThan(0.4 * STEPS ** 3);
    expect(countOver(mended)).toBe(0);
    const differences = new Uint16Array(STEPS ** 3);
    table.measure8(cube.data as Uint8Array, differences, STEPS ** 3);
    const changedInside = Array.from(differences).filter(
      (difference, i) =>
        difference <= table.limit * UNITS_PER_DELTA_E &&
        [0, 1, 2].some((k) => cube.data[3 * i + k] !== mended.data[3 * i + k]),
    );
    expect(changedInside).toEqual([]);
  });

  it('changes nothing the second time, and never what it was given', () => {
    const before = cube.data.slice();
    expect(mend(mended)).toBe(mended);
    mend(cube);
    expect(cube.data).toEqual(before);
  });

  // 16 bits reach a little farther into a cell of the table: the same table judges them.
  it('in 16 bits too', () => {
    const deep = mend(deepen(cube));
    const differences = new Uint16Array(STEPS ** 3);
    table.measure16(deep.data as Uint16Array, differences, STEPS ** 3);
    expect(differences.filter((d) => d > table.limit * UNITS_PER_DELTA_E)).toHaveLength(0);
    expect(mend(deep)).toBe(deep);
  });
});

describe('into-gamut keeps the hue', () => {
  // Clipping at constant CIELAB hue turns these towards purple: the known fault of that space in the blues.
  it.each([
    [0, 0, 1],
    [0, 0, 0.8],
    [0.1, 0.1, 1],
    [0.1, 0.2, 0.9],
    [0, 0.3, 1],
  ])('a deep blue stays blue: %s %s %s', (...blue) => {
    expect(hueTurn(hueOf(blue), hueOf(map.convert(blue)))).toBeLessThan(8);
    const [r, g] = map.convert(blue);
    expect(r!).toBeLessThan(g! + 0.02);
  });

  it('any colour, by a second space made for hue', () => {
    const turns: number[] = [];
    for (let i = 0; i < 9 ** 3; i++) {
      const colour = [i % 9, Math.floor(i / 9) % 9, Math.floor(i / 81)].map((step) => step / 8);
      const found = map.convert(colour);
      if (found === colour) continue;
      expect(table.measure(found)).toBeLessThanOrEqual(table.limit);
      turns.push(hueTurn(hueOf(colour), hueOf(found)));
    }
    turns.sort((a, b) => a - b);
    expect(turns[Math.floor(turns.length / 2)]).toBeLessThan(3);
    expect(turns.at(-1)).toBeLessThan(15);
  });

  it('and as much of the chroma as the condition makes: a little more is over the limit or another lightness', () => {
    const oklch = converter('oklch');
    for (const colour of [
      [0, 1, 0],
      [1, 0, 1],
      [0, 1, 1],
      [0.2, 0, 0.6],
    ]) {
      const [r, g, b] = map.convert(colour) as [number, number, number];
      const printed = oklch({ mode: 'rgb', r, g, b });
      const more = converter('rgb')({ ...printed, c: printed.c * 1.12 });
      expect(table.measure([more.r, more.g, more.b])).toBeGreaterThan(table.limit - 0.5);
    }
  });
});

describe('into-gamut is smooth', () => {
  // A ramp from gray to the most vivid green: no step between neighbours may be seen that was not there before.
  it.each([
    [0, 1, 0],
    [0, 0, 1],
    [1, 0, 1],
    [0, 1, 1],
  ])('along a ramp to %s %s %s no neighbours draw apart', (...end) => {
    const ramp = paintRgb(
      512,
      1,
      (x) => end.map((v) => Math.round(128 + (255 * v - 128) * (x / 511))) as [number, number, number],
    );
    const mended = mend(ramp);
    const lab = ({ data }: Raster, x: number) =>
      table.reproduce(Array.from(data.subarray(3 * x, 3 * x + 3), (sample) => sample / 255)).sourceLabD50;
    const stepOf = (raster: Raster, x: number) => measureDeltaE2000(...lab(raster, x - 1), ...lab(raster, x));
    let largest = 0;
    for (let x = 1; x < 512; x++) largest = Math.max(largest, stepOf(mended, x) - stepOf(ramp, x));
    expect(largest).toBeLessThan(1);
  });
});

describe('into-gamut and alpha', () => {
  it('mends what is printed: over white where alpha is partial; alpha and hidden colour stay', () => {
    const raster = paintRaster(
      256,
      4,
      (x, y) =>
        [
          [0, 255, 0],
          [0, 0, 255],
          [255, 0, 255],
          [30, 200, 255],
        ][y]!.concat(x) as [number, number, number, number],
    );
    const mended = mend(raster);
    expect(mended).not.toBe(raster);
    expect(mend(mended)).toBe(mended);
    for (let i = 0; i < 1024; i++) expect(mended.data[4 * i + 3]).toBe(raster.data[4 * i + 3]);
    for (const y of [0, 1, 2, 3])
      expect(mended.data.subarray(1024 * y, 1024 * y + 4)).toEqual(
        raster.data.subarray(1024 * y, 1024 * y + 4),
      );
    const flat = createRaster({ ...raster, hasAlpha: false });
    for (let i = 0; i < 1024; i++)
      for (let k = 0; k < 3; k++) {
        const alpha = mended.data[4 * i + 3]!;
        flat.data[3 * i + k] = Math.floor(
          (mended.data[4 * i + k]! * alpha + (255 - alpha) * 255) / 255 + 0.5,
        );
      }
    expect(countOver(flat)).toBe(0);
  });

  it('any pixels: mending twice is mending once, nothing stays over', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 64, maxLength: 64 }), (data) => {
        const raster: Raster = { widthPx: 4, heightPx: 4, model: 'rgb', hasAlpha: true, depth: 8, data };
        const copy = data.slice();
        const mended = mend(raster);
        expect(data).toEqual(copy);
        expect(mend(mended)).toBe(mended);
      }),
      { numRuns: 200 },
    );
  });

  it('gray art is left as it is', () => {
    const gray: Raster = {
      widthPx: 2,
      heightPx: 1,
      model: 'gray',
      hasAlpha: false,
      depth: 8,
      data: new Uint8Array([10, 200]),
    };
    expect(mend(gray)).toBe(gray);
  });
});

describe('a job with into-gamut', () => {
  const job = { blank: PLATE, widthMm: 40, ppi: 254, mends: ['into-gamut'] } as const;

  it.each([
    ['sRGB', null],
    ['wide', wideProfile()],
  ])('%s art: gamut passes afterwards, and the entry says what was changed', async (_, profile) => {
    const ownColours: Artwork['ownColours'] = profile && {
      name: 'wide',
      profile,
      toSrgb: makeSrgbTransform(profile),
    };
    const raster = paintRgb(400, 400, (x, y) =>
      y < 100 ? [90, 90, 90] : [x % 256, 255 - (x % 256), y % 256],
    );
    const given = artworkOf(raster, { ownColours });
    const { artwork, mends } = await mendArtwork(given, job);
    expect(given.raster).toBe(raster);
    const { outcomes, plan } = await checkArtwork(artwork, job);
    expect(outcomes.find(({ check }) => check === 'gamut')!.status).toBe('passed');
    expect(plan!.steps[0]).toEqual({ step: 'mend', mend: 'into-gamut' });
    const [entry] = reportMends(mends, outcomes);
    expect(entry).toMatchObject({ mend: 'into-gamut', largestAlpha: 0, mended: ['gamut/out-of-gamut'] });
    expect(entry!.areaMm2).toBeCloseTo(entry!.pixels / 100, 6);
    expect(entry!.largestDeltaE00).toBeGreaterThan(5);
    const again = await mendArtwork(artwork, job);
    expect(again.mends).toEqual([]);
    expect(again.artwork.raster).toBe(artwork.raster);
  });

  // Violet shapes with black rims: enlarged, the mixed rims of them alone were over the limit on 3 % of the art.
  it('passes where resampling mixes colours', async () => {
    const raster = paintRgb(80, 80, (x, y) =>
      x % 8 === 0 || y % 8 === 0 ? [0, 0, 0] : x % 8 > 4 ? [255, 250, 255] : [150, 60, 240],
    );
    const { artwork, request } = await mendArtwork(artworkOf(raster), { ...job, widthMm: 90 });
    const { outcomes } = await checkArtwork(artwork, request);
    expect(outcomes.find(({ check }) => check === 'gamut')).toMatchObject({
      status: 'passed',
      facts: { sharePercent: 0 },
    });
  });

  it('says nothing where there was nothing to mend, and nothing at all where it was not asked for', async () => {
    const given = artworkOf(paintRgb(100, 100, () => [120, 95, 75]));
    const { artwork, mends } = await mendArtwork(given, job);
    expect(mends).toEqual([]);
    expect(artwork.raster).toBe(given.raster);
    expect((await mendArtwork(given, { blank: PLATE })).artwork).toBe(given);
    const { outcomes, plan } = await checkArtwork(given, { blank: PLATE, widthMm: 40 });
    expect(plan!.steps[0]!.step).toBe('crop');
    expect(codesOf(outcomes.find(({ check }) => check === 'gamut')!)).toEqual([]);
  });

  // The other side measures in Lab of D65: numbers of Lab are given as such, so that nothing is adapted.
  it('measures the largest change exactly', async () => {
    const given = artworkOf(paintRgb(400, 400, () => [0, 255, 0]));
    const { artwork, mends } = await mendArtwork(given, job);
    const found = Array.from(artwork.raster.data.subarray(0, 3), (sample) => sample / 255);
    const lab = (colour: readonly number[]) => table.reproduce(colour).sourceLabD50;
    const differ = differenceCiede2000();
    const as = ([l, a, b]: readonly [number, number, number]) => ({ mode: 'lab65', l, a, b }) as const;
    expect(mends[0]).toMatchObject({ pixels: 160_000 });
    expect(mends[0]!.areaMm2).toBeCloseTo(1600, 6);
    expect(mends[0]!.largestDeltaE00).toBeCloseTo(differ(as(lab([0, 1, 0])), as(lab(found))), 2);
  });
});
