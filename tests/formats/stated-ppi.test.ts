import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import {
  exifSegment,
  type JpegSegment,
  jfifSegment,
  putIntoJpeg,
} from '../../fixtures/byte-writers/put-into-jpeg.ts';
import { putIntoWebp } from '../../fixtures/byte-writers/put-into-webp.ts';
import { type ExifRecipe, writeExif } from '../../fixtures/byte-writers/write-exif.ts';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, type TiffEntry, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';

const PIXEL = sharp({ create: { width: 2, height: 1, channels: 3, background: '#336699' } });
const JPEG = await PIXEL.clone().jpeg().toBuffer();
const GIF = await PIXEL.clone().gif().toBuffer();
const WEBP = await PIXEL.clone().webp({ lossless: true }).toBuffer();

const statedBy = async (bytes: Uint8Array) => (await readArtwork(bytes)).statedPpi;

const png = (...chunks: { type: string; data: Uint8Array }[]) =>
  writePng({ widthPx: 1, heightPx: 1, colourType: 0, bitDepth: 8, samples: [7], chunks });
const pHYs = (x: number, y: number, unit: number) => {
  const data = new Uint8Array(9);
  new DataView(data.buffer).setUint32(0, x);
  new DataView(data.buffer).setUint32(4, y);
  data[8] = unit;
  return { type: 'pHYs', data };
};
const exif = (x: number, y: number, unit?: number): ExifRecipe => ({
  xResolution: [x, 1],
  yResolution: [y, 1],
  ...(unit === undefined ? {} : { resolutionUnit: unit }),
});
const jpeg = (...segments: JpegSegment[]) => putIntoJpeg(JPEG, segments);
const webp = (recipe: ExifRecipe) =>
  putIntoWebp(WEBP, { widthPx: 2, heightPx: 1, hasAlpha: false }, [
    { type: 'EXIF', data: writeExif(recipe) },
  ]);
const tiff = (...extra: TiffEntry[]) =>
  writeTiff([
    {
      entries: pictureEntries({ widthPx: 1, heightPx: 1, bits: [8], photometric: 1 }, extra),
      pixels: Uint8Array.of(7),
    },
  ]);
const rational = (tag: number, ...values: [number, number]): TiffEntry => ({ tag, type: 5, values });

describe('stated density: nothing is invented', () => {
  it.each([
    ['PNG without pHYs', png()],
    ['JPEG without JFIF', jpeg()],
    ['JFIF that states only the shape of a pixel (unit 0)', jpeg(jfifSegment(0, 72, 72))],
    ['JFIF of 0 x 0', jpeg(jfifSegment(1, 0, 0))],
    ['EXIF without resolution', jpeg(exifSegment(writeExif({ orientation: 1 })))],
    ['EXIF without an absolute unit (1)', jpeg(exifSegment(writeExif(exif(300, 300, 1))))],
    [
      'EXIF of 300/0',
      jpeg(exifSegment(writeExif({ xResolution: [300, 0], yResolution: [300, 0], resolutionUnit: 2 }))),
    ],
    ['WebP without EXIF', WEBP],
    ['GIF', GIF],
    ['TIFF without resolution', tiff()],
    [
      'TIFF without an absolute unit (1)',
      tiff(rational(282, 300, 1), rational(283, 300, 1), { tag: 296, type: 3, values: [1] }),
    ],
  ])('%s: null', async (_, bytes) => {
    expect(await statedBy(bytes)).toBe(null);
  });
});

describe('stated density of PNG: pHYs per metre, both axes', () => {
  // Pixels per metre that programs write for common densities, and the ppi that these numbers truly are.
  it.each([
    [2835, 72.009],
    [5906, 150.0124],
    [11811, 299.9994],
    [23622, 599.9988],
    [28346, 719.9884],
    [56693, 1440.0022],
    [1000, 25.4],
    [11800, 299.72],
  ])('%i per metre is %d ppi', async (perMetre, ppi) => {
    const stated = await statedBy(png(pHYs(perMetre, perMetre, 1)));
    expect(stated!.x).toBeCloseTo(ppi, 10);
    expect(stated!.y).toBeCloseTo(ppi, 10);
  });

  it('keeps two axes apart', async () => {
    const stated = await statedBy(png(pHYs(11811, 5906, 1)));
    expect(stated).toEqual({ x: 11811 * 0.0254, y: 5906 * 0.0254 });
  });

  it.each([
    ['unit 0 states only the shape', pHYs(300, 300, 0)],
    ['an unknown unit', pHYs(300, 300, 2)],
    ['0 pixels', pHYs(0, 11811, 1)],
    ['a short chunk', { type: 'pHYs', data: new Uint8Array(8) }],
  ])('%s: null', async (_, chunk) => {
    expect(await statedBy(png(chunk))).toBe(null);
  });

  it('takes EXIF where there is no pHYs, and pHYs where there are both', async () => {
    const eXIf = { type: 'eXIf', data: writeExif(exif(240, 240, 2)) };
    expect(await statedBy(png(eXIf))).toEqual({ x: 240, y: 240 });
    expect((await statedBy(png(pHYs(11811, 11811, 1), eXIf)))!.x).toBeCloseTo(299.9994, 10);
  });
});

describe('stated density of JPEG: EXIF wins over JFIF', () => {
  it.each([
    ['JFIF per inch', jpeg(jfifSegment(1, 300, 150)), { x: 300, y: 150 }],
    ['JFIF per centimetre', jpeg(jfifSegment(2, 100, 118)), { x: 254, y: 299.72 }],
    [
      'EXIF 300, JFIF 72',
      jpeg(jfifSegment(1, 72, 72), exifSegment(writeExif(exif(300, 300, 2)))),
      { x: 300, y: 300 },
    ],
    [
      'EXIF 72, JFIF 300',
      jpeg(jfifSegment(1, 300, 300), exifSegment(writeExif(exif(72, 72, 2)))),
      { x: 72, y: 72 },
    ],
    ['EXIF without a unit means inches', jpeg(exifSegment(writeExif(exif(300, 200)))), { x: 300, y: 200 }],
    [
      'EXIF per centimetre, big endian',
      jpeg(exifSegment(writeExif(exif(100, 100, 3), false))),
      { x: 254, y: 254 },
    ],
    [
      'EXIF that states none leaves JFIF',
      jpeg(jfifSegment(1, 300, 300), exifSegment(writeExif({ orientation: 1 }))),
      { x: 300, y: 300 },
    ],
  ])('%s', async (_, bytes, expected) => {
    const stated = await statedBy(bytes);
    expect(stated!.x).toBeCloseTo(expected.x, 10);
    expect(stated!.y).toBeCloseTo(expected.y, 10);
  });
});

describe('stated density of the other formats', () => {
  it('TIFF by its unit: inch, centimetre, and inch when it is left out', async () => {
    const resolution = [rational(282, 300, 1), rational(283, 3001, 20)];
    expect(await statedBy(tiff(...resolution, { tag: 296, type: 3, values: [2] }))).toEqual({
      x: 300,
      y: 150.05,
    });
    expect(await statedBy(tiff(...resolution, { tag: 296, type: 3, values: [3] }))).toEqual({
      x: 762,
      y: 150.05 * 2.54,
    });
    expect(await statedBy(tiff(...resolution))).toEqual({ x: 300, y: 150.05 });
  });

  it('WebP and AVIF by EXIF', async () => {
    expect(await statedBy(webp(exif(300, 150, 2)))).toEqual({ x: 300, y: 150 });
    const avif = await sharp({ create: { width: 16, height: 16, channels: 3, background: '#336699' } })
      .withDensity(220)
      .avif()
      .toBuffer();
    expect(await statedBy(avif)).toEqual({ x: 220, y: 220 });
  });

  it('a PNG that the imaging library wrote without being asked states 25.4 ppi, and that is what is told', async () => {
    expect(await statedBy(await PIXEL.clone().png().toBuffer())).toEqual({ x: 25.4, y: 25.4 });
  });
});
