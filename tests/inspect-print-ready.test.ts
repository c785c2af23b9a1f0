import { PNG } from 'pngjs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { encodePng } from '../src/formats/png-write.ts';
import { encodeTiff } from '../src/formats/tiff-write.ts';
import { blankFromSize, inspectPrintReady, preflight, readPrinterProfile } from '../src/index.ts';
import { createRaster } from '../src/raster/raster.ts';
import { makeArt } from './cli/art.ts';
import { printReadyRaster, tagsFor } from './formats/print-ready.ts';
import { COATED_REFERENCE } from './icc/coated-reference.ts';
import { askWitness, requireWitness } from './witness.ts';

const raster = printReadyRaster(false);
// The record must tell of this very picture: 67 x 41 px at 300 ppi.
const SIZE = { widthMm: (67 / 300) * 25.4, heightMm: (41 / 300) * 25.4 };
const tags = tagsFor(raster, SIZE);
const png = await encodePng(raster, tags);
const tiff = await encodeTiff(raster, tags);

async function codesOf(bytes: Uint8Array): Promise<readonly string[]> {
  const { verdict, changes } = await inspectPrintReady(bytes);
  return [verdict, ...changes.map(({ code }) => code)];
}

describe('inspectPrintReady', () => {
  it.each([
    ['PNG', png],
    ['TIFF', tiff],
  ])('finds a %s of its own unchanged, at its size', async (_, bytes) => {
    const { trueSizeMm, ...inspection } = await inspectPrintReady(bytes);
    expect(inspection).toMatchObject({ verdict: 'unchanged', changes: [], error: null, record: tags.record });
    // Whole pixels per metre: 11811 for 300 ppi is off by 2 in a million.
    expect(trueSizeMm!.width).toBeCloseTo(SIZE.widthMm, 4);
    expect(trueSizeMm!.height).toBeCloseTo(SIZE.heightMm, 4);
  });

  it('finds what the whole product writes unchanged: PNG, TIFF, clear, and in the inks of a printer', async () => {
    const base = { blank: blankFromSize('20x20mm'), widthMm: 2, surface: 'first' } as const;
    const conversion = readPrinterProfile(COATED_REFERENCE, 'mine.icc');
    const requests = [
      [base, { format: 'png', write: true }],
      [base, { format: 'tiff', write: true }],
      [
        { ...base, background: { r: 0, g: 0, b: 0, alpha: 0 } },
        { format: 'png', write: true },
      ],
      [
        { ...base, conversion },
        { format: 'tiff', write: true },
      ],
    ] as const;
    for (const [request, options] of requests) {
      const { printReady } = await preflight({ path: 'art.png', bytes: makeArt() }, request, options);
      const { verdict, changes, record } = await inspectPrintReady(printReady!.bytes);
      expect([verdict, changes]).toEqual(['unchanged', []]);
      expect(record).toMatchObject({ mirrored: true, ppi: 300 });
      expect(record!.printerProfile?.sha256).toBe('conversion' in request ? conversion.sha256 : undefined);
    }
  });

  it('finds one changed sample in the picture, also when nothing but the last one changed', async () => {
    for (const at of [0, raster.data.length - 1]) {
      const data = raster.data.slice();
      data[at] = data[at]! ^ 1;
      for (const encode of [encodePng, encodeTiff])
        expect(await codesOf(await encode({ ...raster, data }, tags))).toEqual(['changed', 'pixels']);
    }
  });

  it('finds a picture of another size', async () => {
    const small = createRaster({ widthPx: 60, heightPx: 41, model: 'rgb', hasAlpha: false, depth: 8 });
    expect(await codesOf(await encodePng(small, tags))).toEqual(['changed', 'size-in-pixels', 'pixels']);
  });

  it.each([300.02, 299.98, 72])('finds the density of %d where 300 was written', async (ppi) => {
    for (const encode of [encodePng, encodeTiff])
      expect(await codesOf(await encode(raster, { ...tags, ppi }))).toEqual(['changed', 'density']);
  });

  it('takes the density of a page whose scale is corrected for its own', async () => {
    const densityPpi = { x: 300, y: 298.8 };
    const corrected = tagsFor(raster, { ...SIZE, densityPpi });
    for (const encode of [encodePng, encodeTiff])
      expect(await codesOf(await encode(raster, { ...corrected, densityPpi }))).toEqual(['unchanged']);
    expect(await codesOf(await encodePng(raster, corrected))).toEqual(['changed', 'density']);
  });

  it('finds what exiftool took away or added, and lets other notes come and go', async (context) => {
    requireWitness(context, 'exiftool');
    const savedBy = async (name: string, bytes: Uint8Array, ...args: string[]) =>
      codesOf(askWitness('exiftool', [...args, '-o', '-', name], { [name]: bytes }).stdout);
    expect(await savedBy('a.png', png, '-XMP-dc:Title=Plant sale')).toEqual(['unchanged']);
    expect(await savedBy('a.tif', tiff, '-XMP-dc:Title=Plant sale')).toEqual(['unchanged']);
    expect(await savedBy('a.tif', tiff, '-XResolution=72', '-YResolution=72')).toEqual([
      'changed',
      'density',
    ]);
    expect(await savedBy('a.tif', tiff, '-XResolution=', '-YResolution=')).toEqual([
      'changed',
      'density-lost',
    ]);
    expect(await savedBy('a.tif', tiff, '-ICC_Profile:all=')).toEqual(['changed', 'profile-lost']);
    expect(await savedBy('a.tif', tiff, '-n', '-IFD0:Orientation=2')).toEqual(['changed', 'orientation']);
    expect(await savedBy('a.tif', tiff, '-XMP:all=')).toEqual(['not-print-ready']);
    expect(await savedBy('a.png', png, '-all=')).toEqual(['not-print-ready']);
  });

  it('finds a file saved anew as JPEG, and with another profile', async () => {
    const jpeg = await sharp(png).keepMetadata().jpeg().toBuffer();
    expect(await codesOf(jpeg)).toEqual(expect.arrayContaining(['changed', 'another-format', 'pixels']));
    const conversion = readPrinterProfile(COATED_REFERENCE, 'mine.icc');
    const inks = createRaster({ widthPx: 67, heightPx: 41, model: 'cmyk', hasAlpha: false, depth: 8 });
    const printerProfile = { sha256: conversion.sha256, name: conversion.name };
    const inkTags = tagsFor(inks, { ...SIZE, printerProfile });
    const profile = conversion.bytes;
    expect(await codesOf(await encodeTiff(inks, { ...inkTags, profile }))).toEqual(['unchanged']);
    const other = Uint8Array.from(profile);
    other[other.length - 1] = other[other.length - 1]! ^ 1;
    expect(await codesOf(await encodeTiff(inks, { ...inkTags, profile: other }))).toEqual([
      'changed',
      'profile',
    ]);
  });

  it('knows no file that lost its record, nor one of others', async () => {
    expect(await codesOf(PNG.sync.write(PNG.sync.read(Buffer.from(png))))).toEqual(['not-print-ready']);
    expect(await codesOf(makeArt())).toEqual(['not-print-ready']);
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
    expect(await codesOf(svg)).toEqual(['not-print-ready']);
  });

  it('tells a proof and a damaged record apart', async () => {
    expect(await codesOf(await encodePng(raster, tagsFor(raster, { ...SIZE, kind: 'proof' })))).toEqual([
      'proof',
    ]);
    const damaged = tagsFor(raster, { ...SIZE, sourceSha256: 'none' });
    expect(await codesOf(await encodePng(raster, damaged))).toEqual(['record-damaged']);
  });

  it.each([
    ['nothing', new Uint8Array(0), 'empty-file', false],
    ['text', Buffer.from('sow in April'), 'unsupported-format', false],
    ['noise', Uint8Array.of(7, 1, 0, 255, 9, 3, 200, 4), 'unknown-format', false],
    ['half a PNG', png.subarray(0, png.length - 900), 'damaged', true],
    ['half a TIFF', tiff.subarray(0, 900), 'damaged', false],
  ])('cannot read %s, and tells the record where it is left', async (_, bytes, code, hasRecord) => {
    const { verdict, error, record } = await inspectPrintReady(bytes);
    expect([verdict, error?.code, record !== null]).toEqual(['unreadable', code, hasRecord]);
  });
});
