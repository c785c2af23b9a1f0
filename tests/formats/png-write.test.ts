import fc from 'fast-check';
import { PNG } from 'pngjs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readPngChunks } from '../../src/formats/png-chunks.ts';
import { encodePng } from '../../src/formats/png-write.ts';
import { readPrintRecord } from '../../src/formats/print-record.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { printReadyRaster, tagsFor } from './print-ready.ts';

const both = [false, true] as const;

describe('encodePng', () => {
  it.each(both)('gives every pixel back by pngjs (alpha: %s)', async (hasAlpha) => {
    const raster = printReadyRaster(hasAlpha);
    const png = PNG.sync.read(Buffer.from(await encodePng(raster, tagsFor(raster))));
    expect([png.width, png.height]).toEqual([raster.widthPx, raster.heightPx]);
    const channels = hasAlpha ? 4 : 3;
    let wrong = 0;
    for (let pixel = 0; pixel < raster.widthPx * raster.heightPx; pixel++) {
      for (let channel = 0; channel < channels; channel++)
        if (png.data[pixel * 4 + channel] !== raster.data[pixel * channels + channel]) wrong++;
      if (!hasAlpha && png.data[pixel * 4 + 3] !== 255) wrong++;
    }
    expect(wrong).toBe(0);
  });

  it.each(both)(
    'holds exactly the chunks meant, in the order of ISO/IEC 15948, 5.6 (alpha: %s)',
    async (hasAlpha) => {
      const raster = printReadyRaster(hasAlpha);
      const types = readPngChunks(await encodePng(raster, tagsFor(raster))).map(({ type }) => type);
      expect(types.filter((type, index) => type !== types[index - 1])).toEqual([
        ...['IHDR', 'sRGB', 'gAMA', 'cHRM', 'pHYs', 'iTXt'],
        ...['IDAT', 'IEND'],
      ]);
    },
  );

  it('states the density within half a pixel per metre at any ppi, exactly as the known table does', async () => {
    const raster = printReadyRaster(false, 1, 1);
    const perMetre = async (ppi: number) => {
      const chunks = readPngChunks(await encodePng(raster, tagsFor(raster, { ppi })));
      const { data } = chunks.find(({ type }) => type === 'pHYs')!;
      const view = new DataView(data.buffer, data.byteOffset);
      expect([data.length, view.getUint32(4), view.getUint8(8)]).toEqual([9, view.getUint32(0), 1]);
      return view.getUint32(0);
    };
    // Pixels per metre that printing programs write for these (derived: ppi / 0.0254, rounded).
    for (const [ppi, known] of [
      [72, 2835],
      [150, 5906],
      [300, 11811],
      [600, 23622],
      [720, 28346],
      [1440, 56693],
    ] as const)
      expect(await perMetre(ppi)).toBe(known);
    await fc.assert(
      fc.asyncProperty(fc.double({ min: 1, max: 2400, noNaN: true }), async (ppi) => {
        expect(Math.abs((await perMetre(ppi)) - ppi / 0.0254)).toBeLessThanOrEqual(0.5);
      }),
      { seed: 62, numRuns: 100 },
    );
  });

  it('is the same, byte for byte, however many threads the library has', async () => {
    const raster = printReadyRaster(true, 300, 700);
    const first = await encodePng(raster, tagsFor(raster));
    const threads = sharp.concurrency();
    try {
      sharp.concurrency(threads === 1 ? 2 : 1);
      expect(Buffer.compare(await encodePng(raster, tagsFor(raster)), first)).toBe(0);
    } finally {
      sharp.concurrency(threads);
    }
  });

  it('carries its record, also for names that XML must escape', async () => {
    const raster = printReadyRaster(false);
    const tags = tagsFor(raster, { blankId: `<b> & "q" 'a' ü ☕ ]]>`, mirrored: false, widthMm: 1e-7 });
    expect(readPrintRecord(await encodePng(raster, tags))).toEqual(tags.record);
  });

  it('refuses what is not 8-bit rgb: the plan has failed to convert it', async () => {
    const raster = printReadyRaster(false);
    await expect(encodePng({ ...raster, depth: 16 }, tagsFor(raster))).rejects.toThrow('8-bit rgb');
  });
});

describe('encodePng, seen by others', () => {
  it.for(both)('passes pngcheck, with the chunks as meant (alpha: %s)', async (hasAlpha, context) => {
    requireWitness(context, 'pngcheck');
    const raster = printReadyRaster(hasAlpha, 640, 480);
    const { status, stdout } = askWitness('pngcheck', ['-v', 'a.png'], {
      'a.png': await encodePng(raster, tagsFor(raster)),
    });
    const text = stdout.toString();
    expect(text).toContain('No errors detected');
    expect(text).toContain('11811x11811 pixels/meter (300 dpi)');
    expect(text).toContain('rendering intent = relative colorimetric');
    expect(status).toBe(0);
  });

  it('shows exiftool its size, density and record', async (context) => {
    requireWitness(context, 'exiftool');
    const raster = printReadyRaster(true);
    const { record } = tagsFor(raster);
    const { stdout } = askWitness('exiftool', ['-j', '-n', '-a', '-G1', 'a.png'], {
      'a.png': await encodePng(raster, tagsFor(raster)),
    });
    const [tags] = JSON.parse(stdout.toString());
    expect(tags).toMatchObject({
      'PNG:ImageWidth': 67,
      'PNG:ImageHeight': 41,
      'PNG-pHYs:PixelsPerUnitX': 11811,
      'PNG-pHYs:PixelsPerUnitY': 11811,
      'PNG-pHYs:PixelUnits': 1,
      'PNG:SRGBRendering': 1,
      'XMP-xmp:CreatorTool': 'blankcheck 0.1.0',
      'XMP-blankcheck:Version': '0.1.0',
      'XMP-blankcheck:SourceSha256': record.sourceSha256,
      'XMP-blankcheck:PixelSha256': record.pixelSha256,
      'XMP-blankcheck:BlankId': 'tile-ceramic-8in',
      'XMP-blankcheck:WidthMm': 206,
      'XMP-blankcheck:HeightMm': 206.5,
      'XMP-blankcheck:Ppi': 300,
      'XMP-blankcheck:Mirrored': true,
    });
    expect(
      Object.keys(tags).filter((name) =>
        /warning|error|orientation|time$/i.test(name.replace(/^System:.*|^File:.*/, '')),
      ),
    ).toEqual([]);
  });

  it.for(both)(
    'gives ImageMagick the same pixels, as sRGB at 300 ppi (alpha: %s)',
    async (hasAlpha, context) => {
      requireWitness(context, 'convert', 'identify');
      const raster = printReadyRaster(hasAlpha);
      const files = { 'a.png': await encodePng(raster, tagsFor(raster)) };
      const { stdout } = askWitness(
        'convert',
        ['a.png', '-depth', '8', hasAlpha ? 'rgba:-' : 'rgb:-'],
        files,
      );
      expect(Buffer.compare(stdout, Buffer.from(raster.data))).toBe(0);
      const asked = [
        '-units',
        'PixelsPerInch',
        '-format',
        '%w %h %[colorspace] %[fx:round(resolution.x)]',
        'a.png',
      ];
      expect(askWitness('identify', asked, files).stdout.toString()).toBe('67 41 sRGB 300');
    },
  );
});
