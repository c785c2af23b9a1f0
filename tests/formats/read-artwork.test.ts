import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { readAvifFacts } from '../../src/formats/avif-facts.ts';
import { writePngChunk } from '../../src/formats/png-chunks.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { makeSmallFiles } from './small-files.ts';

const FILES = await makeSmallFiles();
const PNG = FILES.png!;
const gray = (widthPx: number, heightPx: number) =>
  writePng({ widthPx, heightPx, colourType: 0, bitDepth: 8, samples: new Array(widthPx * heightPx).fill(9) });

const bytesOf = ({ raster: { data } }: Artwork) => Buffer.from(data.buffer, data.byteOffset, data.byteLength);

const whitePng = (sidePx: number) =>
  sharp({ create: { width: sidePx, height: sidePx, channels: 3, background: '#fff' } })
    .png()
    .toBuffer();

describe('what is told of every artwork', () => {
  it.each(Object.entries(FILES))('%s', async (name, bytes) => {
    const artwork = await readArtwork(bytes);
    const { widthPx, heightPx, data, depth } = artwork.raster;
    expect(artwork.format).toBe(name.split(/[ ,]/)[0]);
    expect(artwork.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(artwork.pages).toBe(/animated|two pages/.test(name) ? 2 : 1);
    expect(artwork.printRecord).toBe(null);
    expect(artwork.vector === null).toBe(artwork.format !== 'svg');
    expect(data.length % (widthPx * heightPx)).toBe(0);
    expect(data.BYTES_PER_ELEMENT * 8).toBe(depth);
    if (name !== 'svg') expect([widthPx, heightPx].sort()).toEqual([6, 8]);
  });

  it('does not change the bytes, wherever they lie in memory', async () => {
    for (const bytes of Object.values(FILES)) {
      const room = new Uint8Array(bytes.length + 9).fill(0xee);
      room.set(bytes, 5);
      const view = room.subarray(5, 5 + bytes.length);
      const [inRoom, alone] = [await readArtwork(view), await readArtwork(Uint8Array.from(bytes))];
      expect(Buffer.compare(bytesOf(inRoom), bytesOf(alone))).toBe(0);
      // The profile's lookups are functions, and no two functions are equal.
      const facts = ({ ownColours, ...artwork }: typeof alone) => ({
        ...artwork,
        raster: null,
        colours: ownColours?.name,
      });
      expect(facts(inRoom)).toEqual(facts(alone));
      expect(Buffer.compare(view, bytes)).toBe(0);
    }
  });
});

describe('pages: only the first is read', () => {
  it('counts frames of an animated PNG', async () => {
    const animation = new Uint8Array(8);
    animation[3] = 12;
    const bytes = writePng({
      widthPx: 1,
      heightPx: 1,
      colourType: 0,
      bitDepth: 8,
      samples: [7],
      chunks: [{ type: 'acTL', data: animation }],
    });
    expect(await readArtwork(bytes)).toMatchObject({ pages: 12, raster: { widthPx: 1, heightPx: 1 } });
  });

  it('counts no reduced copies of a TIFF', async () => {
    const page = (kind: number) => ({
      entries: pictureEntries({ widthPx: 1, heightPx: 1, bits: [8], photometric: 1 }, [
        { tag: 254, type: 4, values: [kind] },
      ]),
      pixels: Uint8Array.of(kind),
    });
    expect((await readArtwork(writeTiff([page(0), page(1), page(2), page(4)]))).pages).toBe(2); // full, and one page of several
  });

  it('shows the first frame of a GIF and of a WebP', async () => {
    for (const format of ['gif', 'webp'] as const) {
      const frames = sharp(Buffer.concat([Buffer.alloc(192, 255), Buffer.alloc(192, 0)]), {
        raw: { width: 8, height: 16, channels: 3, pageHeight: 8 },
      });
      const bytes = await (format === 'gif' ? frames.gif() : frames.webp({ lossless: true })).toBuffer();
      const { raster, pages } = await readArtwork(bytes);
      expect([pages, raster.widthPx, raster.heightPx, raster.data[0]]).toEqual([2, 8, 8, 255]);
    }
  });

  it('counts samples of an AVIF sequence', () => {
    const box = (type: string, data: Uint8Array) => {
      const chunk = writePngChunk(type, data); // length, type and data are laid out alike, but for what the length counts
      new DataView(chunk.buffer).setUint32(0, data.length + 8);
      return chunk.subarray(0, data.length + 8);
    };
    const sizes = new Uint8Array(12);
    sizes[11] = 30;
    const track = ['stbl', 'minf', 'mdia', 'trak', 'moov'].reduce(
      (inner, type) => box(type, inner),
      box('stsz', sizes),
    );
    const bytes = new Uint8Array(Buffer.concat([FILES.avif!, track]));
    expect(readAvifFacts(bytes).pages).toBe(30);
  });
});

describe('limits', () => {
  it.each([
    ['too-many-bytes', PNG, { maxBytes: PNG.length - 1 }],
    ['too-many-pixels', gray(20, 5), { maxPixels: 99 }],
  ] as const)('%s just above, none at the limit', async (code, bytes, limits) => {
    await expect(readArtwork(bytes, { limits })).rejects.toMatchObject({ code, kind: 'artwork' });
    const raised = Object.fromEntries(Object.entries(limits).map(([name, value]) => [name, value + 1]));
    expect((await readArtwork(bytes, { limits: raised })).format).toBe('png');
  });

  it('an absurd size in the header is refused before anything is decoded', async () => {
    const bytes = Uint8Array.from(gray(1, 1));
    new DataView(bytes.buffer).setUint32(16, 100_000);
    new DataView(bytes.buffer).setUint32(20, 100_000);
    const header = writePngChunk('IHDR', bytes.subarray(16, 29));
    bytes.set(header, 8);
    await expect(readArtwork(bytes)).rejects.toMatchObject({ code: 'too-many-pixels' });
  });

  it('a small file that unpacks to too many pixels', async () => {
    const bomb = await whitePng(3000);
    expect(bomb.length).toBeLessThan(50_000);
    await expect(readArtwork(bomb, { limits: { maxPixels: 8_999_999 } })).rejects.toMatchObject({
      code: 'too-many-pixels',
    });
  });

  it('time by the clock', async () => {
    const bytes = await whitePng(3000);
    await expect(readArtwork(bytes, { limits: { maxSeconds: 0.001 } })).rejects.toMatchObject({
      code: 'too-slow',
      kind: 'artwork',
    });
  });
});

describe('abort', () => {
  it('before anything is read', async () => {
    const reason = new Error('stopped by the user');
    await expect(readArtwork(PNG, { signal: AbortSignal.abort(reason) })).rejects.toBe(reason);
  });

  it('while a picture is decoded', async () => {
    const large = await whitePng(3000);
    const controller = new AbortController();
    const reading = readArtwork(large, { signal: controller.signal });
    setTimeout(() => controller.abort(new Error('stopped')), 1);
    await expect(reading).rejects.toThrow('stopped');
  });

  it('a signal that is never given changes nothing and is let go', async () => {
    const { signal } = new AbortController();
    expect((await readArtwork(PNG, { signal })).format).toBe('png');
  });
});
