import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { writePngChunk } from '../../src/formats/png-chunks.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { makeSmallFiles } from './small-files.ts';

const FILES = await makeSmallFiles();
const CASES = Object.entries(FILES);

/** The code of the refusal, or null when the bytes were accepted. Anything but a refusal of ours fails the test. */
async function refusalOf(bytes: Uint8Array): Promise<string | null> {
  try {
    await readArtwork(bytes);
    return null;
  } catch (error) {
    if (!(error instanceof BlankcheckError) || error.kind !== 'artwork') throw error;
    return error.code;
  }
}

describe('a file that is cut off (decoders accept some)', () => {
  it.each(CASES)('%s: whole, it is read', async (_, bytes) => {
    expect(await refusalOf(bytes)).toBe(null);
  });

  it.each(CASES)('%s: cut at any byte, it is refused', async (_, bytes) => {
    const accepted: number[] = [];
    for (let length = 0; length < bytes.length; length++)
      if ((await refusalOf(bytes.subarray(0, length))) === null) accepted.push(length);
    expect(accepted).toEqual([]);
  });

  it.each(CASES)('%s: half of it is known for what it was', async (name, bytes) => {
    expect(await refusalOf(bytes.subarray(0, bytes.length >> 1)), name).toBe('damaged');
  });

  it('without a byte, says so', async () => {
    expect(await refusalOf(new Uint8Array(0))).toBe('empty-file');
  });
});

describe('junk behind the end', () => {
  it.each(CASES.filter(([name]) => name !== 'svg'))('%s: is passed over', async (_, bytes) => {
    const longer = new Uint8Array(bytes.length + 37).fill(0xa5);
    longer.set(bytes);
    expect(await refusalOf(longer)).toBe(null);
  });
});

describe('containers in more parts than any picture has', () => {
  const begin = (format: string, length: number) => {
    const bytes = new Uint8Array(length);
    bytes.set(FILES[format]!.subarray(0, Math.min(length, 33)));
    return bytes;
  };

  it('PNG of a million empty chunks', async () => {
    const bytes = new Uint8Array(
      Buffer.concat([begin('png', 33), Buffer.alloc(12_000_000, writePngChunk('aaAa', new Uint8Array(0)))]),
    );
    expect(await refusalOf(bytes)).toBe('damaged');
  });

  it('JPEG of a million empty segments', async () => {
    const bytes = new Uint8Array(
      Buffer.concat([Uint8Array.of(0xff, 0xd8), Buffer.alloc(4_000_000, Uint8Array.of(0xff, 0xe5, 0, 2))]),
    );
    expect(await refusalOf(bytes)).toBe('damaged');
  });

  it('TIFF without any pixels', async () => {
    const entries = pictureEntries({ widthPx: 1, heightPx: 1, bits: [8], photometric: 1 });
    expect(await refusalOf(writeTiff([{ entries }]))).toBe('damaged');
  });

  it('TIFF whose strip lies beyond the end', async () => {
    const entries = pictureEntries({ widthPx: 1, heightPx: 2, bits: [8], photometric: 1 });
    const bytes = writeTiff([{ entries, pixels: Uint8Array.of(7, 8) }]);
    expect(await refusalOf(bytes)).toBe(null);
    expect(await refusalOf(bytes.subarray(0, bytes.length - 1))).toBe('damaged');
  });
});

describe('a decoder that says no more than that the header is wrong', () => {
  // Neither a depth of 5 bits nor a colour type 5 is defined. @see PNG (Third Edition), 11.2.1
  it.each([8, 9])('leaves no empty words in the message (byte %i of IHDR)', async (place) => {
    const png = FILES.png!;
    const header = Uint8Array.from(png.subarray(16, 29));
    header[place] = 5;
    const bytes = new Uint8Array(
      Buffer.concat([png.subarray(0, 8), writePngChunk('IHDR', header), png.subarray(33)]),
    );
    expect(await refusalOf(bytes)).toBe('damaged');
    await expect(readArtwork(bytes)).rejects.toThrow(/^(?!.*(?::|\()\s*\))/);
  });
});

/** Promise: any bytes in, a picture or a clean refusal out. */
describe('bytes that were changed', () => {
  const changes = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), {
    minLength: 1,
    maxLength: 6,
  });

  it.each(CASES)('%s: gives a picture or a refusal, never a crash', async (_, bytes) => {
    await fc.assert(
      fc.asyncProperty(changes, async (list) => {
        const changed = Uint8Array.from(bytes);
        for (const [place, value] of list) changed[place % changed.length] = value;
        await refusalOf(changed);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  it('gives a refusal for bytes of chance behind the beginning of every format', async () => {
    const beginnings = CASES.map(([, bytes]) => bytes.subarray(0, 16));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...beginnings),
        fc.uint8Array({ maxLength: 300 }),
        async (beginning, rest) => {
          expect(await refusalOf(new Uint8Array(Buffer.concat([beginning, rest])))).not.toBe(null);
        },
      ),
      { seed: 8, numRuns: 400 },
    );
  });
});
