import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { exifSegment, putIntoJpeg } from '../../fixtures/byte-writers/put-into-jpeg.ts';
import { putIntoWebp } from '../../fixtures/byte-writers/put-into-webp.ts';
import { turnAvif } from '../../fixtures/byte-writers/turn-avif.ts';
import { writeExif } from '../../fixtures/byte-writers/write-exif.ts';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { channelsOf } from '../../src/raster/raster.ts';
import { DISPLAYED, paintRows, readLabels, STORED } from './labelled-picture.ts';

const VALUES = [1, 2, 3, 4, 5, 6, 7, 8];
const BLOCK = 16; // JPEG and AVIF mix neighbouring pixels: each label is a block there

const rawSharp = ({ widthPx, heightPx, samples }: ReturnType<typeof paintRows>) =>
  sharp(Uint8Array.from(samples), { raw: { width: widthPx, height: heightPx, channels: 3 } });

const orientedPng = (value: number) =>
  writePng({
    ...paintRows(STORED[value]!),
    colourType: 2,
    bitDepth: 8,
    chunks: [{ type: 'eXIf', data: writeExif({ orientation: value }) }],
  });

const orientedTiff = (value: number) => {
  const { widthPx, heightPx, samples } = paintRows(STORED[value]!);
  const entries = pictureEntries({ widthPx, heightPx, bits: [8, 8, 8], photometric: 2 }, [
    { tag: 274, type: 3, values: [value] },
  ]);
  return writeTiff([{ entries, pixels: Uint8Array.from(samples) }], value % 2 === 0);
};

const orientedWebp = async (value: number) => {
  const picture = paintRows(STORED[value]!);
  const webp = await rawSharp(picture).webp({ lossless: true }).toBuffer();
  return putIntoWebp(webp, { ...picture, hasAlpha: false }, [
    { type: 'EXIF', data: writeExif({ orientation: value }) },
  ]);
};

const orientedJpeg = async (value: number) => {
  const jpeg = await rawSharp(paintRows(STORED[value]!, BLOCK))
    .jpeg({ chromaSubsampling: '4:4:4' })
    .toBuffer();
  return putIntoJpeg(jpeg, [exifSegment(writeExif({ orientation: value }, value % 2 === 0))]);
};

describe('orientation: all eight values are applied once', () => {
  it.each(
    VALUES.flatMap((value) => [
      ['PNG', value, orientedPng, 1] as const,
      ['TIFF', value, orientedTiff, 1] as const,
      ['WebP', value, orientedWebp, 1] as const,
      ['JPEG', value, orientedJpeg, BLOCK] as const,
    ]),
  )('%s, value %i', async (_, value, write, scale) => {
    const artwork = await readArtwork(await write(value));
    expect(artwork.orientation).toBe(value);
    expect(readLabels(artwork.raster, channelsOf(artwork.raster), scale)).toEqual(DISPLAYED);
  });

  it.each([0, 9, 65535])('takes the value %i, which means nothing, for none', async (value) => {
    const exif = [{ type: 'eXIf', data: writeExif({ orientation: value }) }];
    const artwork = await readArtwork(
      writePng({ ...paintRows(DISPLAYED), colourType: 2, bitDepth: 8, chunks: exif }),
    );
    expect(artwork.orientation).toBe(1);
    expect(readLabels(artwork.raster, 3)).toEqual(DISPLAYED);
  });

  it('keeps the axes of the density with the picture: stored 300 x 150, turned by 6', async () => {
    const exif = writeExif({
      orientation: 6,
      xResolution: [300, 1],
      yResolution: [150, 1],
      resolutionUnit: 2,
    });
    const jpeg = await rawSharp(paintRows(STORED[6]!, BLOCK)).jpeg().toBuffer();
    expect((await readArtwork(putIntoJpeg(jpeg, [exifSegment(exif)]))).statedPpi).toEqual({ x: 150, y: 300 });
  });
});

/** HEIF turns by properties of the item; EXIF only informs (ISO/IEC 23008-12, 6.5.10, 6.5.12; annex A). */
describe('orientation of AVIF: by its own boxes, EXIF is not followed', () => {
  const avif = (rows: readonly string[], exifOrientation?: number) => {
    const image = rawSharp(paintRows(rows, BLOCK)).avif({ lossless: true });
    return (
      exifOrientation === undefined
        ? image
        : image.withExif({ IFD0: { Orientation: String(exifOrientation) } })
    ).toBuffer();
  };

  it.each([
    [{ quarterTurns: 0 }, STORED[1]!],
    [{ quarterTurns: 1 }, STORED[8]!], // anticlockwise by 90 degrees, as value 8 asks
    [{ quarterTurns: 2 }, STORED[3]!],
    [{ quarterTurns: 3 }, STORED[6]!],
    [{ quarterTurns: 0, mirrorAxis: 1 }, STORED[2]!], // left and right change places
    [{ quarterTurns: 0, mirrorAxis: 0 }, STORED[4]!],
  ] as const)('%o', async (turn, stored) => {
    const artwork = await readArtwork(turnAvif(await avif(stored), turn));
    expect(artwork.orientation).toBe(1);
    expect(readLabels(artwork.raster, channelsOf(artwork.raster), BLOCK)).toEqual(DISPLAYED);
  });

  it('passes over an orientation in EXIF', async () => {
    const artwork = await readArtwork(await avif(DISPLAYED, 6));
    expect(artwork.orientation).toBe(1);
    expect(readLabels(artwork.raster, channelsOf(artwork.raster), BLOCK)).toEqual(DISPLAYED);
  });
});
