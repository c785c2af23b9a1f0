import { createHash } from 'node:crypto';
import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { findFileAtRest } from '../../../cli/inputs/file-at-rest.ts';
import { letGo } from '../../../cli/inputs/let-go.ts';
import type { Artwork } from '../../../src/formats/artwork.ts';
import { readArtwork } from '../../../src/formats/read-artwork.ts';
import { STAND_IN_BYTES } from '../../../src/formats/stand-in.ts';
import { blankFromSize, preflight } from '../../../src/index.ts';
import { makeSmallFiles } from '../../formats/small-files.ts';
import { makeFolder } from '../temp-folder.ts';

const FILES = await makeSmallFiles();
const PICTURES = Object.entries(FILES).filter(([name]) => !name.startsWith('svg'));
const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** Bytes of their own, and a file of the same. */
async function standInFor(bytes: Uint8Array, name = 'art') {
  const path = join(makeFolder({ [name]: bytes }), name);
  const file = (await findFileAtRest(path))!;
  return { own: Uint8Array.from(bytes), standIn: { ...file, sha256: hash(bytes) } };
}

const factsOf = ({ ownColours, raster, ...artwork }: Artwork) => ({
  ...artwork,
  raster: { ...raster, data: null },
  // The profile's lookups are functions, and no two functions are equal.
  colours: ownColours?.name,
});

describe('a picture decoded from the file that stands in for its bytes', () => {
  it.each(PICTURES)('is the same, and its bytes are given up: %s', async (_, bytes) => {
    const { own, standIn } = await standInFor(bytes);
    const [read, expected] = [await readArtwork(own, { standIn }), await readArtwork(bytes)];
    expect(factsOf(read)).toEqual(factsOf(expected));
    expect(read.raster.data).toEqual(expected.raster.data);
    expect(own.length).toBe(0);
  });

  it('keeps bytes that are a part of what lies in memory', async () => {
    const room = new Uint8Array(FILES.png!.length + 9).fill(7);
    room.set(FILES.png!, 5);
    const { standIn } = await standInFor(FILES.png!);
    const part = room.subarray(5, 5 + FILES.png!.length);
    await readArtwork(part, { standIn });
    expect(hash(part)).toBe(hash(FILES.png!));
    await letGo(room);
    expect(part.length).toBe(0);
  });

  it('has the pixels of now, though a file of that name was read before', async () => {
    const dark = await sharp({ create: { width: 9, height: 9, channels: 3, background: '#123' } })
      .png()
      .toBuffer();
    const light = await sharp({ create: { width: 9, height: 9, channels: 3, background: '#edc' } })
      .png()
      .toBuffer();
    const path = join(makeFolder({ 'pear.png': dark }), 'pear.png');
    for (const [bytes, first] of [
      [dark, 0x11],
      [light, 0xee],
    ] as const) {
      writeFileSync(path, bytes);
      const standIn = { ...(await findFileAtRest(path))!, sha256: hash(bytes) };
      const { raster } = await readArtwork(Uint8Array.from(bytes), { standIn });
      expect(raster.data[0]).toBe(first);
    }
  });

  it.each([
    ['of another content', (path: string) => writeFileSync(path, FILES.png!)],
    ['gone', (path: string) => rmSync(path)],
  ])('is refused where the file is %s by then', async (_, change) => {
    const { own, standIn } = await standInFor(FILES.png!);
    change(standIn.path);
    await expect(readArtwork(own, { standIn })).rejects.toMatchObject({ code: 'cannot-read' });
  });
});

describe('what may stand in', () => {
  it('is a plain file, or a link to one', async () => {
    const folder = makeFolder({ 'pear.png': FILES.png!, 'beds/': '' });
    symlinkSync('pear.png', join(folder, 'link.png'));
    const found = await Promise.all(
      ['pear.png', 'link.png', 'beds', 'none.png'].map((name) => findFileAtRest(join(folder, name))),
    );
    expect(found.map((file) => file !== null)).toEqual([true, true, false, false]);
  });

  it('is none with brackets at the end of its name, which the decoder takes for options', async () => {
    const folder = makeFolder({ 'pear[1]': FILES.png!, 'pear[1].png': FILES.png! });
    expect(await findFileAtRest(join(folder, 'pear[1]'))).toBeNull();
    const { own, standIn } = await standInFor(FILES.png!, 'pear[page=1].png');
    expect((await readArtwork(own, { standIn })).raster.widthPx).toBe(8);
  });
});

describe('a large artwork', () => {
  const SIDE_PX = Math.ceil(Math.sqrt(STAND_IN_BYTES / 8));
  const request = { blank: blankFromSize('90x90mm'), widthMm: 80 };
  /** Eight bytes a pixel, and not compressed: few pixels for so large a file. */
  const large = sharp({ create: { width: SIDE_PX, height: SIDE_PX, channels: 4, background: '#2a6' } })
    .toColourspace('rgb16')
    .tiff({ compression: 'none' })
    .toBuffer();

  it('is judged the same from its bytes and from its file, which alone takes them', async () => {
    const bytes = await large;
    expect(bytes.length).toBeGreaterThan(STAND_IN_BYTES);
    const { own, standIn } = await standInFor(bytes, 'pear.tif');
    const byBytes = await preflight({ path: 'pear.tif', bytes }, request, { write: true });
    const byFile = await preflight({ path: 'pear.tif', bytes: own, standIn }, request, {
      write: true,
    });
    expect(byFile).toEqual(byBytes);
    expect(byFile.printReady).not.toBeNull();
    expect([bytes.length > 0, own.length]).toEqual([true, 0]);
  }, 120_000);

  it('that changed is unreadable, and its report has the hash and the format of what was read', async () => {
    const bytes = await large;
    const { own, standIn } = await standInFor(bytes, 'pear.tif');
    writeFileSync(standIn.path, FILES.png!);
    const { report } = await preflight({ path: 'pear.tif', bytes: own, standIn }, request);
    expect(report).toMatchObject({
      status: 'unreadable',
      error: { code: 'cannot-read' },
      artwork: { sha256: standIn.sha256, format: 'tiff' },
    });
  }, 120_000);

  it('that is small keeps its bytes', async () => {
    const { own, standIn } = await standInFor(FILES.png!);
    await preflight({ path: 'pear.png', bytes: own, standIn }, request);
    expect(hash(own)).toBe(hash(FILES.png!));
  });
});
