import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { findHeaderSize } from '../../src/index.ts';

const picture = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 4, background: '#3a7d2c80' } });

describe('findHeaderSize', () => {
  it.each(['png', 'jpeg', 'gif', 'tiff', 'avif'] as const)(
    'is what the writer of the %s put there',
    async (format) => {
      const bytes = await picture(123, 45).toFormat(format).toBuffer();
      expect(findHeaderSize(bytes)).toMatchObject({ width: 123, height: 45 });
    },
  );

  it.each([
    ['lossy', { lossless: false }, false],
    ['lossy with alpha', { lossless: false }, true],
    ['lossless', { lossless: true }, true],
  ] as const)('is that of a WebP, %s', async (_, options, alpha) => {
    const art = alpha ? picture(123, 45) : picture(123, 45).removeAlpha();
    expect(findHeaderSize(await art.webp(options).toBuffer())).toMatchObject({ width: 123, height: 45 });
  });

  it('tells 16 bits from 8', async () => {
    const deep = await picture(8, 8).toColourspace('rgb16').png().toBuffer();
    expect(findHeaderSize(deep)?.bytesPerSample).toBe(2);
    expect(findHeaderSize(await picture(8, 8).png().toBuffer())?.bytesPerSample).toBe(1);
  });

  it('is null for a drawing, and for a header beyond the first bytes', async () => {
    expect(
      findHeaderSize(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')),
    ).toBeNull();
    const jpeg = await picture(123, 45).jpeg().toBuffer();
    expect(findHeaderSize(jpeg.subarray(0, 20))).toBeNull();
  });

  it('never throws', async () => {
    const heads = await Promise.all(
      (['png', 'jpeg', 'gif', 'tiff', 'avif', 'webp'] as const).map((format) =>
        picture(30, 20).toFormat(format).toBuffer(),
      ),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...heads),
        fc.nat(600),
        fc.array(fc.tuple(fc.nat(600), fc.nat(255)), { maxLength: 8 }),
        (head, length, changes) => {
          const bytes = Uint8Array.from(head.subarray(0, length));
          for (const [at, value] of changes) if (at < bytes.length) bytes[at] = value;
          const size = findHeaderSize(bytes);
          expect(size === null || (size.width > 0 && size.height > 0)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});
