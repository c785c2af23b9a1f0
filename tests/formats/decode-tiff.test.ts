import { describe, expect, it } from 'vitest';
import { pictureEntries, type TiffEntry, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { decodePicture } from '../../src/formats/decode-picture.ts';
import { limitsWith } from '../../src/formats/limits.ts';
import { openPicture } from '../../src/formats/open-picture.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { readSamples } from './read-samples.ts';

const shorts = (values: readonly number[]) => new Uint8Array(Uint16Array.from(values).buffer);
const tiff = (
  shape: {
    widthPx: number;
    heightPx?: number;
    bits: readonly number[];
    photometric: number;
    extraSample?: 0 | 1 | 2;
  },
  pixels: Uint8Array,
  extra: readonly TiffEntry[] = [],
) => writeTiff([{ entries: pictureEntries({ heightPx: 1, ...shape }, extra), pixels }]);

describe('TIFF: device samples exactly, at their own depth', () => {
  it.each([
    [
      'gray 8',
      tiff({ widthPx: 3, bits: [8], photometric: 1 }, Uint8Array.of(0, 7, 255)),
      'gray',
      false,
      8,
      [0, 7, 255],
    ],
    [
      'gray 8, white is 0',
      tiff({ widthPx: 3, bits: [8], photometric: 0 }, Uint8Array.of(0, 7, 255)),
      'gray',
      false,
      8,
      [255, 248, 0],
    ],
    [
      'gray 1',
      tiff({ widthPx: 4, bits: [1], photometric: 1 }, Uint8Array.of(0b0110_0000)),
      'gray',
      false,
      8,
      [0, 255, 255, 0],
    ],
    [
      'gray 1, white is 0',
      tiff({ widthPx: 4, bits: [1], photometric: 0 }, Uint8Array.of(0b0110_0000)),
      'gray',
      false,
      8,
      [255, 0, 0, 255],
    ],
    [
      'gray 4',
      tiff({ widthPx: 2, bits: [4], photometric: 1 }, Uint8Array.of(0x1f)),
      'gray',
      false,
      8,
      [17, 255],
    ],
    [
      'gray 16',
      tiff({ widthPx: 2, bits: [16], photometric: 1 }, shorts([1, 65534])),
      'gray',
      false,
      16,
      [1, 65534],
    ],
    [
      'gray 8 + alpha',
      tiff({ widthPx: 2, bits: [8, 8], photometric: 1, extraSample: 2 }, Uint8Array.of(9, 1, 8, 0)),
      'gray',
      true,
      8,
      [9, 1, 8, 0],
    ],
    [
      'gray 16 + alpha',
      tiff({ widthPx: 1, bits: [16, 16], photometric: 1, extraSample: 2 }, shorts([513, 1])),
      'gray',
      true,
      16,
      [513, 1],
    ],
    [
      'RGB 8',
      tiff({ widthPx: 1, bits: [8, 8, 8], photometric: 2 }, Uint8Array.of(1, 2, 3)),
      'rgb',
      false,
      8,
      [1, 2, 3],
    ],
    [
      'RGB 16',
      tiff({ widthPx: 1, bits: [16, 16, 16], photometric: 2 }, shorts([257, 513, 65534])),
      'rgb',
      false,
      16,
      [257, 513, 65534],
    ],
    [
      'RGBA 8',
      tiff({ widthPx: 1, bits: [8, 8, 8, 8], photometric: 2, extraSample: 2 }, Uint8Array.of(9, 8, 7, 0)),
      'rgb',
      true,
      8,
      [9, 8, 7, 0],
    ],
    [
      'RGBA 16',
      tiff(
        { widthPx: 1, bits: [16, 16, 16, 16], photometric: 2, extraSample: 2 },
        shorts([900, 800, 700, 1]),
      ),
      'rgb',
      true,
      16,
      [900, 800, 700, 1],
    ],
    [
      'a palette of 16-bit colours',
      tiff({ widthPx: 2, bits: [8], photometric: 3 }, Uint8Array.of(0, 2), [
        { tag: 320, type: 3, values: Array.from({ length: 768 }, (_, index) => Math.abs(index - 255) * 128) },
      ]),
      'rgb',
      false,
      8,
      [127, 0, 128, 126, 1, 129],
    ],
  ] as const)('%s', async (_, bytes, model, hasAlpha, depth, samples) => {
    expect(await readSamples(bytes)).toEqual({ model, hasAlpha, depth, samples: [...samples] });
  });

  it('makes premultiplied alpha straight: 40 of 255 under alpha 70 was 145.7', async () => {
    const { samples } = await readSamples(
      tiff({ widthPx: 1, bits: [8, 8, 8, 8], photometric: 2, extraSample: 1 }, Uint8Array.of(40, 70, 0, 70)),
    );
    expect(Math.abs(samples[0]! - (40 * 255) / 70)).toBeLessThan(1); // the decoder rounds down
    expect(samples.slice(1)).toEqual([255, 0, 70]);
  });

  it('keeps CMYK samples as they are, 0 for no ink', async () => {
    const bytes = tiff(
      { widthPx: 2, bits: [8, 8, 8, 8], photometric: 5 },
      Uint8Array.of(0, 10, 20, 30, 255, 0, 0, 0),
    );
    const limits = limitsWith();
    const raster = await decodePicture(await openPicture('tiff', bytes, limits), limits);
    expect(raster).toMatchObject({ model: 'cmyk', hasAlpha: false, depth: 8 });
    expect([...raster.data]).toEqual([0, 10, 20, 30, 255, 0, 0, 0]);
  });

  it.each([
    [
      'floating point',
      tiff({ widthPx: 1, bits: [32], photometric: 1 }, new Uint8Array(4), [
        { tag: 339, type: 3, values: [3] },
      ]),
    ],
    ['32-bit', tiff({ widthPx: 1, bits: [32], photometric: 1 }, new Uint8Array(4))],
    [
      'signed',
      tiff({ widthPx: 1, bits: [16], photometric: 1 }, new Uint8Array(2), [
        { tag: 339, type: 3, values: [2] },
      ]),
    ],
    ['Lab', tiff({ widthPx: 1, bits: [8, 8, 8], photometric: 8 }, new Uint8Array(3))],
    [
      'five channels',
      tiff({ widthPx: 1, bits: [8, 8, 8, 8, 8], photometric: 2 }, new Uint8Array(5), [
        { tag: 338, type: 3, values: [0, 0] },
      ]),
    ],
    [
      'six channels',
      tiff({ widthPx: 1, bits: [8, 8, 8, 8, 8, 8], photometric: 2 }, new Uint8Array(6), [
        { tag: 338, type: 3, values: [0, 0, 0] },
      ]),
    ],
    [
      'a compression that is not built in (zstd)',
      tiff({ widthPx: 1, bits: [8], photometric: 1 }, new Uint8Array(9), [
        { tag: 259, type: 3, values: [50000] },
      ]),
    ],
  ])('refuses %s by name, not as damaged', async (_, bytes) => {
    await expect(readArtwork(bytes)).rejects.toMatchObject({ code: 'unsupported-format' });
  });
});

describe('memory', () => {
  it("hands 16-bit samples out as a view of the decoder's own memory", async () => {
    const bytes = tiff(
      { widthPx: 64, heightPx: 64, bits: [16], photometric: 1 },
      shorts(new Array(4096).fill(5)),
    );
    const { raster } = await readArtwork(bytes);
    expect(raster.data).toBeInstanceOf(Uint16Array);
    expect(raster.data.buffer.byteLength).toBe(raster.data.byteLength);
  });
});
