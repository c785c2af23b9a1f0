import sharp from 'sharp';
import { writeExif } from '../../fixtures/byte-writers/write-exif.ts';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { pictureEntries, writeTiff } from '../../fixtures/byte-writers/write-tiff.ts';

const RGBA = Uint8Array.from({ length: 8 * 6 * 4 }, (_, index) => (index * 37) % 256);
const image = () => sharp(RGBA, { raw: { width: 8, height: 6, channels: 4 } });
const frames = () =>
  sharp(Buffer.concat([RGBA, RGBA.toReversed()]), {
    raw: { width: 8, height: 12, channels: 4, pageHeight: 6 },
  });

/** A small sound file of every kind that is read, as its usual writers write it. */
export async function makeSmallFiles(): Promise<Record<string, Uint8Array>> {
  const samples = [...RGBA];
  const eXIf = [{ type: 'eXIf', data: writeExif({ orientation: 6 }) }];
  const entries = pictureEntries({
    widthPx: 8,
    heightPx: 6,
    bits: [8, 8, 8, 8],
    photometric: 2,
    extraSample: 2,
  });
  return {
    png: await image().png().toBuffer(),
    'png with a palette': await image().png({ palette: true, colours: 4 }).toBuffer(),
    'png, interlaced, with a profile': await image()
      .withIccProfile('p3')
      .png({ progressive: true })
      .toBuffer(),
    'png of 16 bits with eXIf': writePng({
      widthPx: 8,
      heightPx: 6,
      colourType: 6,
      bitDepth: 16,
      samples,
      chunks: eXIf,
    }),
    jpeg: await image().flatten().withDensity(300).jpeg().toBuffer(),
    'jpeg, progressive': await image().flatten().jpeg({ progressive: true }).toBuffer(),
    'jpeg, gray': await image().flatten().toColourspace('b-w').jpeg().toBuffer(),
    'webp, lossy': await image().webp().toBuffer(),
    'webp, lossless': await image().webp({ lossless: true }).toBuffer(),
    'webp with EXIF and a profile': await image()
      .withDensity(300)
      .withIccProfile('p3')
      .webp({ lossless: true })
      .toBuffer(),
    'webp, animated': await frames().webp({ lossless: true }).toBuffer(),
    'tiff, directory first': writeTiff([{ entries, pixels: RGBA }]),
    'tiff, big endian, two pages': writeTiff(
      [
        { entries, pixels: RGBA },
        { entries, pixels: RGBA },
      ],
      false,
    ),
    'tiff, lzw': await image().tiff({ compression: 'lzw' }).toBuffer(),
    'tiff, deflate, tiles': await image()
      .tiff({ compression: 'deflate', tile: true, tileWidth: 16, tileHeight: 16 })
      .toBuffer(),
    avif: await image().avif({ lossless: true }).toBuffer(),
    'avif with EXIF and a profile': await image()
      .withDensity(300)
      .withIccProfile('p3')
      .avif({ lossless: true })
      .toBuffer(),
    gif: await image().gif().toBuffer(),
    'gif, animated': await frames().gif().toBuffer(),
    svg: new TextEncoder().encode(
      '<svg xmlns="http://www.w3.org/2000/svg" width="8" height="6"><rect width="4" height="4"/></svg>',
    ),
  };
}
