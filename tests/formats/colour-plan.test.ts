import { deflateSync } from 'node:zlib';
import { converter } from 'culori';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { curveTag, descriptionTag, lutTag, xyzTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { type JpegSegment, putIntoJpeg } from '../../fixtures/byte-writers/put-into-jpeg.ts';
import { ascii, joinBytes, writeIcc } from '../../fixtures/byte-writers/write-icc.ts';
import { type PngRecipe, writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { convertToSrgb } from '../../src/formats/convert-to-srgb.ts';
import { WIDE_PROFILE } from '../../src/icc/wide-profile.ts';
import { toRgb8 } from '../../src/raster/to-8-bit.ts';
import { readArtwork } from '../../src/read-artwork.ts';

/** sRGB's colorants adapted to D50, as every sRGB profile carries them (IEC 61966-2-1; ICC.1:2022, annex E). */
const SRGB_COLORANTS = {
  rXYZ: [0.43607, 0.22249, 0.01392],
  gXYZ: [0.38515, 0.71687, 0.09708],
  bXYZ: [0.14307, 0.06061, 0.7141],
};
const srgbToLinear = (value: number) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
const SRGB_CURVE = Array.from({ length: 1024 }, (_, index) => Math.round(srgbToLinear(index / 1023) * 65535));

const matrixProfile = (name: string, curve: readonly number[]) => {
  const colorants = Object.entries(SRGB_COLORANTS).map(([tag, xyz]) => [tag, xyzTag(xyz)] as const);
  const trc = curveTag(curve);
  return writeIcc({
    majorVersion: 2,
    profileClass: 'mntr',
    space: 'RGB ',
    connection: 'XYZ ',
    tags: {
      desc: descriptionTag(name),
      wtpt: xyzTag([0.9642, 1, 0.8249]),
      ...Object.fromEntries(colorants),
      rTRC: trc,
      gTRC: trc,
      bTRC: trc,
    },
  });
};
const grayProfile = (curve: readonly number[]) =>
  writeIcc({
    majorVersion: 2,
    profileClass: 'mntr',
    space: 'GRAY',
    connection: 'XYZ ',
    tags: { desc: descriptionTag('garden gray'), wtpt: xyzTag([0.9642, 1, 0.8249]), kTRC: curveTag(curve) },
  });
const builtIn = async (name: 'p3' | 'srgb' | 'cmyk') => {
  const tagged = await sharp({ create: { width: 1, height: 1, channels: 3, background: '#fff' } })
    .withIccProfile(name)
    .tiff()
    .toBuffer();
  return (await sharp(tagged).metadata()).icc!;
};
const P3 = await builtIn('p3');
const SRGB = await builtIn('srgb');
const CMYK = await builtIn('cmyk');

const iCCP = (profile: Uint8Array) => ({
  type: 'iCCP',
  data: joinBytes([ascii('profile\0\0'), deflateSync(profile)]),
});
const RGBA = [200, 100, 50, 255, 10, 20, 30, 7, 0, 0, 0, 0, 255, 255, 255, 128];
const png = (chunks: PngRecipe['chunks'], shape: Partial<PngRecipe> = {}) =>
  writePng({
    widthPx: 4,
    heightPx: 1,
    colourType: 6,
    bitDepth: 8,
    samples: RGBA,
    chunks: chunks ?? [],
    ...shape,
  });
const GRAY: Partial<PngRecipe> = { colourType: 0, samples: [0, 64, 128, 255] };

/** The samples in sRGB: art of a wider space is brought there only when its print-ready file is made. */
const look = async (bytes: Uint8Array) => {
  const { profile, raster, ownColours } = await readArtwork(bytes);
  const inSrgb = ownColours
    ? convertToSrgb({ ...raster, data: raster.data.slice() }, ownColours.toSrgb)
    : raster;
  const isWide = ownColours?.profile === WIDE_PROFILE;
  return { profile, samples: [...(isWide ? toRgb8(inSrgb) : inSrgb).data], model: raster.model };
};
const numbers = (...values: number[]) => {
  const data = new Uint8Array(values.length * 4);
  for (const [index, value] of values.entries()) new DataView(data.buffer).setUint32(index * 4, value);
  return data;
};
const SRGB_CHRM = [31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000];

describe('sRGB, however it is said: samples stay as they are', () => {
  it.each([
    ['the sRGB chunk', png([{ type: 'sRGB', data: Uint8Array.of(0) }]), 'sRGB'],
    [
      'a profile of curve tables, without a name',
      png([iCCP(matrixProfile('', SRGB_CURVE))]),
      'a profile without a name',
    ],
    ['a version 4 profile', png([iCCP(SRGB)]), 'sRGB'],
    ['gAMA 45455', png([{ type: 'gAMA', data: numbers(45455) }]), 'sRGB'],
    ['gAMA 45000, as some writers round it', png([{ type: 'gAMA', data: numbers(45000) }]), 'sRGB'],
    [
      'gAMA and cHRM of sRGB, rounded by their writer',
      png([
        { type: 'gAMA', data: numbers(45450) },
        { type: 'cHRM', data: numbers(...SRGB_CHRM.map((value) => value + 1)) },
      ]),
      'sRGB',
    ],
    ['cICP 1/13', png([{ type: 'cICP', data: Uint8Array.of(1, 13, 0, 1) }]), 'sRGB'],
  ])('%s', async (_, bytes, name) => {
    expect(await look(bytes)).toEqual({ profile: { kind: 'srgb', name }, samples: RGBA, model: 'rgb' });
  });

  it('also for gray with an sRGB profile, and for gray with the curve of sRGB', async () => {
    expect(await look(png([iCCP(SRGB)], GRAY))).toEqual({
      profile: { kind: 'srgb', name: 'sRGB' },
      samples: GRAY.samples,
      model: 'gray',
    });
    const { profile, samples } = await look(png([iCCP(grayProfile(SRGB_CURVE))], GRAY));
    expect({ kind: profile.kind, samples }).toEqual({ kind: 'srgb', samples: GRAY.samples });
  });

  it('says nothing where the file says nothing', async () => {
    expect((await look(png([]))).profile).toEqual({ kind: 'none', model: 'rgb' });
    expect((await look(png([], GRAY))).profile).toEqual({ kind: 'none', model: 'gray' });
  });

  it('goes by colorants and curve, not by name', async () => {
    const gamma18 = [Math.round(1.8 * 256)];
    const { profile, samples } = await look(png([iCCP(matrixProfile('sRGB IEC61966-2.1', gamma18))]));
    expect(profile).toEqual({ kind: 'rgb', name: 'sRGB IEC61966-2.1' });
    expect(samples).not.toEqual(RGBA);
  });
});

/** Half a step of our own, and what the profile's curve of rounded numbers is off in the dark. */
const ROUNDING = 1.1;

describe('matrix and gray profiles: converted by own code', () => {
  it('Display P3 at 8 bits agrees with culori, and clips what sRGB cannot hold', async () => {
    const { profile, samples } = await look(png([iCCP(P3)]));
    expect(profile.kind).toBe('rgb');
    // Not clipped before it has been judged.
    expect([...(await readArtwork(png([iCCP(P3)]))).raster.data]).toEqual(RGBA);
    const toSrgb = converter('rgb');
    for (let pixel = 0; pixel < 4; pixel++) {
      const [r, g, b] = RGBA.slice(pixel * 4, pixel * 4 + 3).map((code) => code / 255);
      const srgb = toSrgb({ mode: 'p3', r: r!, g: g!, b: b! });
      const expected = [srgb.r, srgb.g, srgb.b].map((value) => Math.min(1, Math.max(0, value)) * 255);
      for (const [channel, value] of expected.entries())
        expect(Math.abs(samples[pixel * 4 + channel]! - value)).toBeLessThan(ROUNDING);
      expect(samples[pixel * 4 + 3]).toBe(RGBA[pixel * 4 + 3]); // alpha is no colour
    }
    expect((await look(png([iCCP(P3)], { samples: [255, 0, 0, 255], widthPx: 1 }))).samples).toEqual([
      255, 0, 0, 255,
    ]);
  });

  it('keeps 16 bits: neighbours of one step stay apart', async () => {
    const deep = {
      bitDepth: 16,
      widthPx: 2,
      samples: [40000, 30000, 20000, 1, 40001, 30000, 20000, 1],
    } as const;
    const { samples } = await look(png([iCCP(P3)], deep));
    const toSrgb = converter('rgb');
    const expected = toSrgb({ mode: 'p3', r: 40000 / 65535, g: 30000 / 65535, b: 20000 / 65535 });
    expect(Math.abs(samples[0]! - expected.r * 65535)).toBeLessThan(24); // the profile's matrix is rounded to 16 bits
    expect(samples[4]! - samples[0]!).toBeGreaterThanOrEqual(1);
    expect([samples[3], samples[7]]).toEqual([1, 1]);
  });

  it('gray of gamma 1.8 by its formula', async () => {
    const { profile, samples, model } = await look(png([iCCP(grayProfile([461]))], GRAY)); // 461/256 = 1.8008
    expect({ profile, model }).toEqual({ profile: { kind: 'gray', name: 'garden gray' }, model: 'gray' });
    const encode = (light: number) =>
      light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
    for (const [index, code] of GRAY.samples!.entries())
      expect(samples[index]).toBe(Math.round(encode((code / 255) ** (461 / 256)) * 255));
  });
});

/** A table that turns every RGB into the gray of L* 50. */
const makeTableProfile = (profileClass: string) =>
  writeIcc({
    majorVersion: 2,
    profileClass,
    space: 'RGB ',
    connection: 'Lab ',
    tags: {
      desc: descriptionTag('table'),
      wtpt: xyzTag([0.9642, 1, 0.8249]),
      A2B0: lutTag('mft2', {
        inputs: 3,
        outputs: 3,
        size: 2,
        inputCurves: [
          [0, 65535],
          [0, 65535],
          [0, 65535],
        ],
        nodes: Array.from({ length: 8 }, () => [0x8000 * 0.99609375, 0x8000, 0x8000].map(Math.round)).flat(),
        outputCurves: [
          [0, 65535],
          [0, 65535],
          [0, 65535],
        ],
      }),
    },
  });

describe('table profiles and CMYK', () => {
  it('an RGB profile with tables is converted and called so', async () => {
    const { profile, samples } = await look(png([iCCP(makeTableProfile('mntr'))]));
    expect(profile).toEqual({ kind: 'table', name: 'table' });
    expect(new Set([0, 1, 2, 4, 5, 6].map((index) => samples[index])).size).toBe(1);
    expect(samples[3]).toBe(255);
  });

  it("a printer's own profile is called so, and converted all the same", async () => {
    const { profile, samples } = await look(png([iCCP(makeTableProfile('prtr'))]));
    expect(profile).toMatchObject({ kind: 'printer', name: 'table' });
    expect(samples).toEqual((await look(png([iCCP(makeTableProfile('mntr'))]))).samples);
  });

  const cmykTiff = (pixels: readonly number[], profile?: Uint8Array) =>
    writeTiff([
      {
        entries: pictureEntries(
          { widthPx: pixels.length / 4, heightPx: 1, bits: [8, 8, 8, 8], photometric: 5 },
          profile ? [{ tag: 34675, type: 7, values: [...profile] }] : [],
        ),
        pixels: Uint8Array.from(pixels),
      },
    ]);
  const INKS = [0, 0, 0, 0, 255, 0, 0, 0, 0, 255, 255, 0, 255, 255, 255, 255];

  it('CMYK with its profile becomes RGB: paper is white, full ink black, cyan and red what they are', async () => {
    const { profile, samples, model } = await look(cmykTiff(INKS, CMYK));
    expect(profile.kind).toBe('cmyk');
    expect(profile).not.toMatchObject({ name: null });
    expect(model).toBe('rgb');
    const [white, cyan, red, black] = [0, 3, 6, 9].map((at) => samples.slice(at, at + 3));
    expect(white).toEqual([255, 255, 255]);
    expect(Math.max(...black!)).toBeLessThan(24); // with black point compensation; the press' own black is code 37 (L* 14)
    expect(cyan![0]).toBeLessThan(100);
    expect(cyan![2]).toBeGreaterThan(180);
    expect(red![0]).toBeGreaterThan(180);
    expect(red![1]).toBeLessThan(100);
  });

  it('CMYK without a profile is named so and still shown as RGB', async () => {
    const { profile, samples, model } = await look(cmykTiff(INKS));
    expect(profile).toEqual({ kind: 'cmyk', name: null, sha256: null });
    expect(model).toBe('rgb');
    expect(samples.slice(0, 3)).toEqual([255, 255, 255]);
    expect(samples[3]).toBeLessThan(samples[5]!);
  });

  it('CMYK with alpha keeps it', async () => {
    const entries = pictureEntries(
      { widthPx: 1, heightPx: 1, bits: [8, 8, 8, 8, 8], photometric: 5, extraSample: 2 },
      [{ tag: 34675, type: 7, values: [...CMYK] }],
    );
    const { samples } = await look(writeTiff([{ entries, pixels: Uint8Array.of(0, 0, 0, 0, 77) }]));
    expect(samples).toEqual([255, 255, 255, 77]);
  });
});

const ICC_MARK = ascii('ICC_PROFILE\0');
const iccSegment = (part: number, of: number, data: Uint8Array): JpegSegment => ({
  marker: 0xe2,
  data: joinBytes([ICC_MARK, Uint8Array.of(part, of), data]),
});

describe('a profile that cannot be used: nothing is lost, the art is judged as untagged', () => {
  it.each([
    ['junk', png([iCCP(new Uint8Array(300).fill(7))])],
    [
      'no zlib stream',
      png([{ type: 'iCCP', data: joinBytes([ascii('x\0\0'), new Uint8Array(30).fill(7)]) }]),
    ],
    ['no name', png([{ type: 'iCCP', data: new Uint8Array(30).fill(7) }])],
    ['a profile cut off', png([iCCP(P3.subarray(0, 200))])],
    ['a profile of CMYK for an RGB picture', png([iCCP(CMYK)])],
    ['a profile of gray for an RGB picture', png([iCCP(grayProfile([461]))])],
    ['a gamma of 0.449, just beyond', png([{ type: 'gAMA', data: numbers(44954) }])],
    ['a gamma of 1/1.8', png([{ type: 'gAMA', data: numbers(55556) }])],
    ['primaries of their own', png([{ type: 'cHRM', data: numbers(...SRGB_CHRM.with(2, 70000)) }])],
    ['colour codes of P3', png([{ type: 'cICP', data: Uint8Array.of(12, 13, 0, 1) }])],
  ])('%s', async (_, bytes) => {
    const { profile, samples } = await look(bytes);
    expect(profile.kind).toBe('unusable');
    expect(samples).toEqual(RGBA);
  });

  it('a bomb: 1 GB of zeros in the profile chunk of a PNG', async () => {
    const { profile } = await look(png([iCCP(new Uint8Array(20_000_000))]));
    expect(profile.kind).toBe('unusable');
  });

  it('JPEG: parts in any order are joined, a missing part is told', async () => {
    const plain = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#c86432' } })
      .jpeg()
      .toBuffer();
    const untagged = (await look(plain)).samples;
    const [first, second] = [P3.subarray(0, 200), P3.subarray(200)];
    const swapped = await look(putIntoJpeg(plain, [iccSegment(2, 2, second), iccSegment(1, 2, first)]));
    expect(swapped.profile.kind).toBe('rgb');
    expect(swapped.samples).not.toEqual(untagged);
    const missing = await look(putIntoJpeg(plain, [iccSegment(1, 2, first)]));
    expect(missing.profile.kind).toBe('unusable');
    expect(missing.samples).toEqual(untagged);
  });

  it.each(['webp', 'avif', 'tiff'] as const)(
    '%s: the profile is found where the format keeps it',
    async (format) => {
      const image = sharp({
        create: { width: 16, height: 16, channels: 3, background: '#c86432' },
      }).withIccProfile('p3');
      const bytes = await (format === 'tiff'
        ? image.tiff({ compression: 'lzw' })
        : image[format]({ lossless: true })
      ).toBuffer();
      expect((await look(bytes)).profile.kind).toBe('rgb');
    },
  );
});
