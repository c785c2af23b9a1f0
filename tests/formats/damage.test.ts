import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
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
