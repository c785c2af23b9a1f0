import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { decodePicture } from '../../src/formats/decode-picture.ts';
import { limitsWith } from '../../src/formats/limits.ts';
import { openPicture } from '../../src/formats/open-picture.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { readSamples } from './read-samples.ts';

describe('other formats', () => {
  const RGBA = Uint8Array.of(255, 0, 0, 255, 9, 8, 7, 0, 0, 0, 255, 1, 30, 60, 90, 128);
  const image = () => sharp(RGBA, { raw: { width: 4, height: 1, channels: 4 } });

  it('lossless WebP keeps every sample, and hidden colour where the writer kept it', async () => {
    const bytes = await image().webp({ lossless: true, exact: true }).toBuffer();
    expect(await readSamples(bytes)).toEqual({ model: 'rgb', hasAlpha: true, depth: 8, samples: [...RGBA] });
  });

  it('GIF has full or no transparency', async () => {
    const opaque = sharp(Uint8Array.of(255, 0, 0, 255, 0, 0, 0, 0), {
      raw: { width: 2, height: 1, channels: 4 },
    });
    const { samples } = await readSamples(await opaque.gif().toBuffer());
    expect(samples.slice(0, 4)).toEqual([255, 0, 0, 255]);
    expect(samples[7]).toBe(0);
  });

  it('gray JPEG stays gray', async () => {
    const gray = sharp(new Uint8Array(64).fill(77), { raw: { width: 8, height: 8, channels: 1 } });
    const result = await readSamples(await gray.toColourspace('b-w').jpeg({ quality: 100 }).toBuffer());
    expect(result).toEqual({ model: 'gray', hasAlpha: false, depth: 8, samples: new Array(64).fill(77) });
  });

  it('CMYK JPEG with the marker that says inverted: 0 is no ink', async () => {
    const white = await sharp({ create: { width: 16, height: 16, channels: 3, background: '#fff' } })
      .toColourspace('cmyk')
      .jpeg({ quality: 100 })
      .toBuffer();
    const limits = limitsWith();
    const raster = await decodePicture(await openPicture('jpeg', white, limits), limits);
    expect(raster.model).toBe('cmyk');
    expect(Math.max(...raster.data)).toBeLessThanOrEqual(2); // JPEG at quality 100 is not lossless
  });

  it('JPEG with a gain map for bright screens: the plain picture counts', async () => {
    const image = sharp({ create: { width: 64, height: 64, channels: 3, background: '#c86432' } });
    // The package's types do not know the method yet.
    const mapped = (image as Sharp & { withGainMap(): Sharp }).withGainMap();
    const bytes = await mapped.jpeg({ quality: 100 }).toBuffer();
    expect(await sharp(bytes).metadata()).toHaveProperty('gainMap');
    const limits = limitsWith();
    const raster = await decodePicture(await openPicture('jpeg', bytes, limits), limits);
    const plain = await sharp(bytes, { ignoreIcc: true }).raw().toBuffer();
    expect([raster.model, raster.depth]).toEqual(['rgb', 8]);
    expect(Buffer.compare(Buffer.from(raster.data as Uint8Array), plain)).toBe(0);
  });

  it.each([
    ['lossless', 0xc3, 8],
    ['arithmetic', 0xc9, 8],
    ['12-bit', 0xc1, 12],
  ])('refuses %s JPEG by name', async (_, marker, bits) => {
    const jpeg = await sharp({ create: { width: 8, height: 8, channels: 3, background: '#c86432' } })
      .jpeg()
      .toBuffer();
    const frame = jpeg.indexOf(Uint8Array.of(0xff, 0xc0));
    const changed = Uint8Array.from(jpeg);
    changed[frame + 1] = marker;
    changed[frame + 4] = bits;
    await expect(readArtwork(changed)).rejects.toMatchObject({ code: 'unsupported-format' });
  });

  // 1023 and 4095 are white: shifted up alone they would be 65472 and 65520, and white would print as a tint.
  it.each([10, 12] as const)(
    'AVIF of %i bits: full scale is 65535, and the rest keeps its place',
    async (bitdepth) => {
      const steps = [0, 1, 512, 1023]
        .map((step) => (bitdepth === 10 ? step : step * 4 + 3))
        .map((step) => step << (16 - bitdepth));
      const samples = Uint16Array.from(
        { length: 16 * 16 * 3 },
        (_, index) => steps[Math.floor(index / 3) % 4]!,
      );
      const image = sharp(samples, { raw: { width: 16, height: 16, channels: 3 } }).toColourspace('rgb16');
      const { depth, samples: found } = await readSamples(
        await image.avif({ lossless: true, bitdepth }).toBuffer(),
      );
      const full = 2 ** bitdepth - 1;
      const expected = steps.map((step) => Math.round(((step >> (16 - bitdepth)) * 65535) / full));
      expect(depth).toBe(16);
      for (const [index, value] of found.slice(0, 12).entries())
        expect(Math.abs(value - expected[Math.floor(index / 3)]!)).toBeLessThanOrEqual(1);
    },
  );
});
