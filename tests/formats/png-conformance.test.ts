import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { PNG_CHANNELS, type PngRecipe, writePng } from '../../fixtures/byte-writers/write-png.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { channelsOf } from '../../src/raster/raster.ts';

/** Every allowed pair (ISO/IEC 15948, table 11.1). */
const KINDS = [
  ...([1, 2, 4, 8, 16] as const).map((bitDepth) => [0, bitDepth] as const),
  ...([8, 16] as const).flatMap((bitDepth) => ([2, 4, 6] as const).map((type) => [type, bitDepth] as const)),
  ...([1, 2, 4, 8] as const).map((bitDepth) => [3, bitDepth] as const),
];
/** Sizes at which Adam7 passes are empty, single or ragged. */
const SIZES = [
  [1, 1],
  [3, 2],
  [5, 9],
  [13, 8],
] as const;

/** The same samples at every run: a short multiplicative congruential sequence. */
function someSamples(count: number, most: number): number[] {
  let state = 20231;
  return Array.from({ length: count }, () => {
    state = (state * 48271) % 2147483647;
    return state % (most + 1);
  });
}

const paletteOf = (entries: number) => someSamples(entries * 3, 255);

/** The samples as a reader must hand them out: palette looked up, fewer than 8 bits scaled so that full stays full. */
function expectedSamples({ colourType, bitDepth, samples }: PngRecipe): number[] {
  if (colourType === 3)
    return samples.flatMap((index) => paletteOf(2 ** bitDepth).slice(index * 3, index * 3 + 3));
  return bitDepth < 8 ? samples.map((sample) => (sample * 255) / (2 ** bitDepth - 1)) : [...samples];
}

const CASES = KINDS.flatMap(([colourType, bitDepth]) =>
  [false, true].flatMap((interlaced) =>
    SIZES.map(([widthPx, heightPx]): [string, PngRecipe] => {
      const samples = someSamples(widthPx * heightPx * PNG_CHANNELS[colourType], 2 ** bitDepth - 1);
      const chunks =
        colourType === 3 ? [{ type: 'PLTE', data: Uint8Array.from(paletteOf(2 ** bitDepth)) }] : [];
      const name = `type ${colourType}, ${bitDepth} bits, ${widthPx} x ${heightPx}${interlaced ? ', interlaced' : ''}`;
      return [name, { widthPx, heightPx, colourType, bitDepth, interlaced, samples, chunks }];
    }),
  ),
);

describe('PNG conformance', () => {
  it('covers all fifteen kinds, plain and interlaced', () => {
    expect(new Set(KINDS.map(String)).size).toBe(15);
    expect(CASES).toHaveLength(15 * 2 * SIZES.length);
  });

  it.each(CASES)('%s: every sample as written', async (_, recipe) => {
    const { raster } = await readArtwork(writePng(recipe));
    const { widthPx, heightPx, colourType, bitDepth } = recipe;
    expect(raster).toMatchObject({
      widthPx,
      heightPx,
      model: colourType === 0 || colourType === 4 ? 'gray' : 'rgb',
      hasAlpha: colourType >= 4,
      depth: bitDepth === 16 ? 16 : 8,
    });
    expect([...raster.data]).toEqual(expectedSamples(recipe));
  });

  it.each(CASES.filter(([, { bitDepth }]) => bitDepth <= 8))('%s: the same in pngjs', async (_, recipe) => {
    const bytes = writePng(recipe);
    const { raster } = await readArtwork(bytes);
    const channels = channelsOf(raster);
    const rgba = Array.from({ length: recipe.widthPx * recipe.heightPx }, (_, pixel) => {
      const samples = raster.data.subarray(pixel * channels, (pixel + 1) * channels);
      const colour =
        raster.model === 'gray' ? [samples[0], samples[0], samples[0]] : [...samples.subarray(0, 3)];
      return [...colour, raster.hasAlpha ? samples[channels - 1] : 255];
    }).flat();
    expect(rgba).toEqual([...PNG.sync.read(Buffer.from(bytes)).data]);
  });
});

describe('PNG transparency by chunk (tRNS)', () => {
  const read = async (recipe: Omit<PngRecipe, 'widthPx' | 'heightPx' | 'interlaced'>) => {
    const widthPx = recipe.samples.length / PNG_CHANNELS[recipe.colourType];
    const { raster } = await readArtwork(writePng({ ...recipe, widthPx, heightPx: 1 }));
    return { model: raster.model, hasAlpha: raster.hasAlpha, samples: [...raster.data] };
  };
  const tRNS = (...bytes: number[]) => ({ type: 'tRNS', data: Uint8Array.from(bytes) });

  it('gives palette entries their alpha, entries beyond the list are opaque', async () => {
    const chunks = [{ type: 'PLTE', data: Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9) }, tRNS(0, 128)];
    const rgba = [1, 2, 3, 0, 4, 5, 6, 128, 7, 8, 9, 255];
    expect(await read({ colourType: 3, bitDepth: 2, samples: [0, 1, 2], chunks })).toEqual({
      model: 'rgb',
      hasAlpha: true,
      samples: rgba,
    });
  });

  it.each([
    [2, [0, 1, 2, 3], [0, 2], [0, 255, 85, 255, 170, 0, 255, 255]],
    [8, [19, 20, 21], [0, 20], [19, 255, 20, 0, 21, 255]],
    [16, [0x0102, 0x0103], [1, 3], [0x0102, 65535, 0x0103, 0]],
  ] as const)(
    'makes exactly one gray of %i bits clear, and keeps gray and alpha',
    async (bitDepth, samples, key, expected) => {
      const chunks = [tRNS(...key)];
      expect(await read({ colourType: 0, bitDepth, samples, chunks })).toEqual({
        model: 'gray',
        hasAlpha: true,
        samples: [...expected],
      });
    },
  );

  it('compares a colour at the full 16 bits', async () => {
    const samples = [1000, 2000, 3000, 1000, 2000, 3001];
    const chunks = [tRNS(1000 >> 8, 1000 & 255, 2000 >> 8, 2000 & 255, 3000 >> 8, 3000 & 255)];
    const expected = [1000, 2000, 3000, 0, 1000, 2000, 3001, 65535];
    expect((await read({ colourType: 2, bitDepth: 16, samples, chunks })).samples).toEqual(expected);
  });
});

describe('16 bits', () => {
  it('keeps an alpha of 1 of 65535, which 8 bits would lose', async () => {
    const { raster } = await readArtwork(
      writePng({ widthPx: 1, heightPx: 1, colourType: 6, bitDepth: 16, samples: [257, 1, 65534, 1] }),
    );
    expect(raster.depth).toBe(16);
    expect([...raster.data]).toEqual([257, 1, 65534, 1]);
  });
});
