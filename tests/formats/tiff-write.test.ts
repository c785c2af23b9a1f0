import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readPrintRecord } from '../../src/formats/print-record.ts';
import { writeSrgbProfile } from '../../src/formats/srgb-profile.ts';
import { readTagNumbers, readTiffTags } from '../../src/formats/tiff-tags.ts';
import { encodeTiff } from '../../src/formats/tiff-write.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { printReadyRaster, tagsFor } from './print-ready.ts';

const both = [false, true] as const;

describe('encodeTiff', () => {
  it.each(both)('holds exactly the tags meant, in ascending order (alpha: %s)', async (hasAlpha) => {
    const raster = printReadyRaster(hasAlpha, 300, 700);
    const { directories, complete } = readTiffTags(await encodeTiff(raster, tagsFor(raster)))!;
    expect([directories.length, complete]).toEqual([1, true]);
    const numbers = (tag: number) => readTagNumbers(directories[0]!.get(tag));
    expect([...directories[0]!.keys()]).toEqual(
      [
        256, 257, 258, 259, 262, 273, 277, 278, 279, 282, 283, 284, 296, 305, 317, 338, 339, 700, 34675,
      ].filter((tag) => hasAlpha || tag !== 338),
    );
    expect([numbers(256), numbers(257), numbers(282), numbers(283), numbers(296)]).toEqual([
      [300],
      [700],
      [300],
      [300],
      [2],
    ]);
    // Adobe deflate, RGB, horizontal predictor, unassociated alpha.
    expect([numbers(259), numbers(262), numbers(317), numbers(338)]).toEqual([
      [8],
      [2],
      [2],
      hasAlpha ? [2] : [],
    ]);
    expect(Buffer.from(directories[0]!.get(34675)!.bytes)).toEqual(Buffer.from(writeSrgbProfile()));
  });

  it.each([
    [300, [300, 1]],
    [360, [360, 1]],
    [254.5, [254_500_000, 1_000_000]],
    [2400, [2400, 1]],
  ] as const)('states %d ppi as a fraction without rounding', async (ppi, fraction) => {
    const raster = printReadyRaster(false, 1, 1);
    const { littleEndian, directories } = readTiffTags(await encodeTiff(raster, tagsFor(raster, { ppi })))!;
    for (const tag of [282, 283]) {
      const { bytes } = directories[0]!.get(tag)!;
      const view = new DataView(bytes.buffer, bytes.byteOffset);
      expect([view.getUint32(0, littleEndian), view.getUint32(4, littleEndian)]).toEqual(fraction);
    }
  });

  it.each(both)('gives every pixel back (alpha: %s)', async (hasAlpha) => {
    const raster = printReadyRaster(hasAlpha, 300, 700);
    const tiff = await encodeTiff(raster, tagsFor(raster));
    const { data, info } = await sharp(tiff, { ignoreIcc: true }).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height, info.channels]).toEqual([300, 700, hasAlpha ? 4 : 3]);
    expect(Buffer.compare(data, Buffer.from(raster.data))).toBe(0);
  });

  it('is the same, byte for byte, each time, and carries its record', async () => {
    const raster = printReadyRaster(true);
    const tags = tagsFor(raster);
    const tiff = await encodeTiff(raster, tags);
    expect(Buffer.compare(await encodeTiff(raster, tags), tiff)).toBe(0);
    expect(readPrintRecord(tiff)).toEqual(tags.record);
  });

  it('refuses what is not 8-bit rgb', async () => {
    const raster = printReadyRaster(false);
    await expect(encodeTiff({ ...raster, depth: 16 }, tagsFor(raster))).rejects.toThrow('8-bit rgb');
  });
});

describe('encodeTiff, seen by others', () => {
  it('shows exiftool its density, profile and record, and no orientation', async (context) => {
    requireWitness(context, 'exiftool');
    const raster = printReadyRaster(true);
    const { record } = tagsFor(raster);
    const { stdout } = askWitness('exiftool', ['-j', '-n', '-a', '-G1', 'a.tif'], {
      'a.tif': await encodeTiff(raster, tagsFor(raster)),
    });
    const [tags] = JSON.parse(stdout.toString());
    expect(tags).toMatchObject({
      'IFD0:XResolution': 300,
      'IFD0:YResolution': 300,
      'IFD0:ResolutionUnit': 2,
      'IFD0:ExtraSamples': 2,
      'IFD0:Software': 'blankcheck 0.1.0',
      'ICC_Profile:ProfileDescription': 'sRGB IEC61966-2.1',
      'XMP-blankcheck:PixelSha256': record.pixelSha256,
      'XMP-blankcheck:Mirrored': true,
    });
    expect(Object.keys(tags).filter((name) => /:(?:Warning|Error|Orientation)$/.test(name))).toEqual([]);
  });

  it.for(both)(
    'gives libtiff no cause to warn, and ImageMagick the same pixels (alpha: %s)',
    async (hasAlpha, context) => {
      requireWitness(context, 'tiffinfo', 'convert');
      const raster = printReadyRaster(hasAlpha, 300, 700);
      const files = { 'a.tif': await encodeTiff(raster, tagsFor(raster)) };
      const { status, stderr, stdout } = askWitness('tiffinfo', ['-D', 'a.tif'], files);
      expect([status, stderr]).toEqual([0, '']);
      expect(stdout.toString()).toContain('Resolution: 300, 300 pixels/inch');
      const pixels = askWitness('convert', ['a.tif', '-depth', '8', hasAlpha ? 'rgba:-' : 'rgb:-'], files);
      expect(Buffer.compare(pixels.stdout, Buffer.from(raster.data))).toBe(0);
    },
  );
});
