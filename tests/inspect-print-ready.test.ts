import { describe, expect, it } from 'vitest';
import { encodePng } from '../src/formats/png-write.ts';
import { encodeTiff } from '../src/formats/tiff-write.ts';
import { inspectPrintReady } from '../src/index.ts';
import { printReadyRaster, tagsFor } from './formats/print-ready.ts';

const raster = printReadyRaster(false);
const tags = tagsFor(raster);
const png = await encodePng(raster, tags);
const tiff = await encodeTiff(raster, tags);

describe('inspectPrintReady', () => {
  it('finds the smallest change of the first and of the last sample', async () => {
    for (const at of [0, raster.data.length - 1]) {
      const data = raster.data.slice();
      data[at] = data[at]! ^ 1;
      for (const encode of [encodePng, encodeTiff]) {
        const { changes } = await inspectPrintReady(await encode({ ...raster, data }, tags));
        expect(changes).toEqual(['pixels']);
      }
    }
  });

  it.each([299.96, 300.04, 72])('finds %d ppi where 300 were written', async (ppi) => {
    for (const encode of [encodePng, encodeTiff])
      expect((await inspectPrintReady(await encode(raster, { ...tags, ppi }))).changes).toEqual(['density']);
  });

  it('reads pictures up to the limit of print-ready files, not that of artworks', async () => {
    expect((await inspectPrintReady(png, { limits: { maxPixels: 100 } })).changes).toEqual([]);
    const tooLarge = inspectPrintReady(png, { limits: { maxCanvasPixels: 100 } });
    await expect(tooLarge).rejects.toMatchObject({ code: 'too-many-pixels' });
  });

  it.each([
    ['nothing', new Uint8Array(0), 'empty-file'],
    ['noise', Uint8Array.of(7, 1, 0, 255, 9, 3, 200, 4), 'unknown-format'],
    ['half a PNG', png.subarray(0, png.length - 900), 'damaged'],
    ['half a TIFF', tiff.subarray(0, 900), 'damaged'],
  ])('cannot read %s', async (_, bytes, code) => {
    await expect(inspectPrintReady(bytes)).rejects.toMatchObject({ code });
  });
});
