import { describe, expect, it } from 'vitest';
import { encodePdf, type PdfPage, type PdfTags } from '../../src/formats/pdf-write.ts';
import { hashPixels, readPrintRecord } from '../../src/formats/print-record.ts';
import { writeSrgbProfile } from '../../src/formats/srgb-profile.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { readPdf } from './pdf-objects-read.ts';
import { printReadyRaster, RECORD } from './print-ready.ts';

const opaque = printReadyRaster(false);
const clear = printReadyRaster(true);
const inks: Raster = (() => {
  const raster = createRaster({ widthPx: 31, heightPx: 17, model: 'cmyk', hasAlpha: false, depth: 8 });
  for (let i = 0; i < raster.data.length; i++) raster.data[i] = (i * 37) & 255;
  return raster;
})();
const A4 = { widthMm: 210, heightMm: 297 };
const pageOf = (raster: Raster, changes: Partial<PdfPage> = {}): PdfPage => ({
  ...A4,
  trimMm: { x: 30, y: 40, width: 100, height: 100 },
  bleedMm: { x: 27, y: 37, width: 106, height: 106 },
  pictures: [{ raster, placeMm: { x: 27, y: 37, width: 106, height: 106 } }],
  drawing: [],
  ...changes,
});
const write = (pages: readonly PdfPage[], changes: Partial<PdfTags> = {}) =>
  encodePdf(pages, { record: RECORD, ...changes });
const toMm = (points: unknown) => (points as number[]).map((point) => (point / 72) * 25.4);
const picturesOf = (pdf: ReturnType<typeof readPdf>) =>
  pdf.objects.filter(({ dictionary }) => dictionary?.['/Subtype'] === '/Image');

describe('encodePdf', () => {
  it('is a PDF without a fault in structure or streams (qpdf)', async (context) => {
    requireWitness(context, 'qpdf');
    for (const raster of [opaque, clear, inks]) {
      const bytes = await write([pageOf(raster), pageOf(raster)]);
      const { status, stderr } = askWitness('qpdf', ['--check', 'a.pdf'], { 'a.pdf': bytes });
      expect(stderr).toBe('');
      expect(status).toBe(0);
    }
  });

  /** @see ISO 32000-1:2008, 14.11.2 */
  it('states its boxes without rounding, from the foot of the page', async (context) => {
    requireWitness(context, 'qpdf');
    const [page] = readPdf(await write([pageOf(opaque)])).pages;
    const expectBox = (name: string, box: readonly number[]) => {
      for (const [i, mm] of toMm(page![name]).entries()) expect(Math.abs(mm - box[i]!)).toBeLessThan(1e-9);
    };
    expectBox('/MediaBox', [0, 0, 210, 297]);
    expectBox('/TrimBox', [30, 297 - 140, 130, 297 - 40]);
    expectBox('/BleedBox', [27, 297 - 143, 133, 297 - 37]);
  });

  it('cuts boxes that reach beyond the page at its edges', async (context) => {
    requireWitness(context, 'qpdf');
    const bleedMm = { x: -3, y: -4, width: 400, height: 150 };
    const [page] = readPdf(await write([pageOf(opaque, { bleedMm })])).pages;
    for (const [i, mm] of toMm(page!['/BleedBox']).entries())
      expect(Math.abs(mm - [0, 297 - 146, 210, 297][i]!)).toBeLessThan(1e-9);
  });

  it('multiplies each axis of the page for a printer whose scale is off', async (context) => {
    requireWitness(context, 'qpdf');
    const [page] = readPdf(await write([pageOf(opaque, { scale: { x: 1.002, y: 0.99 } })])).pages;
    for (const [i, mm] of toMm(page!['/MediaBox']).entries())
      expect(mm).toBeCloseTo([0, 0, 210 * 1.002, 297 * 0.99][i]!, 9);
  });

  it('stores every sample, with and without alpha, and of inks', async (context) => {
    requireWitness(context, 'qpdf');
    for (const raster of [opaque, inks]) {
      const pdf = readPdf(await write([pageOf(raster)]));
      const [picture] = picturesOf(pdf);
      expect(pdf.unpack(`${picture!.number} 0 R`).equals(Buffer.from(raster.data))).toBe(true);
    }
    const pdf = readPdf(await write([pageOf(clear)]));
    const picture = picturesOf(pdf).find(({ dictionary }) => '/SMask' in dictionary)!;
    const colour = pdf.unpack(`${picture.number} 0 R`);
    const alpha = pdf.unpack(picture.dictionary['/SMask']);
    const joined = clear.data.map((_, i) => (i % 4 === 3 ? alpha[i >> 2]! : colour[(i >> 2) * 3 + (i % 4)]!));
    expect(Buffer.from(joined).equals(Buffer.from(clear.data))).toBe(true);
  });

  it('stores a picture once, however often and wherever it is placed', async (context) => {
    requireWitness(context, 'qpdf');
    const place = (x: number) => ({ raster: opaque, placeMm: { x, y: 10, width: 20, height: 12 } });
    const page = pageOf(opaque, { pictures: [place(10), place(50), place(90)] });
    const pdf = readPdf(await write([page, page]));
    expect(pdf.pages).toHaveLength(2);
    expect(picturesOf(pdf)).toHaveLength(1);
  });

  /** @see ISO 32000-1:2008, 8.6.5.5 (ICCBased), 14.11.5 (output intents), 12.2 (viewer preferences) */
  it('carries the very profile, as an output intent too where it is a printer’s, and asks not to be scaled', async (context) => {
    requireWitness(context, 'qpdf');
    const own = readPdf(await write([pageOf(opaque)]));
    expect(own.catalog['/ViewerPreferences']).toEqual({ '/PrintScaling': '/None' });
    expect(own.catalog['/OutputIntents']).toBeUndefined();
    const profileOf = (pdf: typeof own) => {
      const space = pdf.follow(picturesOf(pdf)[0]!.dictionary['/ColorSpace']) as unknown as string[];
      expect(space[0]).toBe('/ICCBased');
      return { bytes: pdf.unpack(space[1]), samples: pdf.follow(space[1])['/N'] };
    };
    expect(profileOf(own).samples).toBe(3);
    expect(profileOf(own).bytes.equals(writeSrgbProfile())).toBe(true);

    const profile = Uint8Array.from({ length: 5000 }, (_, i) => (i * 7) & 255);
    const printer = readPdf(await write([pageOf(inks)], { profile, outputIntent: 'Shed printer, plain é' }));
    expect(profileOf(printer).samples).toBe(4);
    expect(profileOf(printer).bytes.equals(profile)).toBe(true);
    const [intent] = printer.catalog['/OutputIntents'] as Record<string, unknown>[];
    expect(intent).toMatchObject({ '/S': '/GTS_PDFX', '/Info': 'u:Shed printer, plain é' });
    expect(printer.unpack(intent!['/DestOutputProfile']).equals(profile)).toBe(true);
  });

  it('brings along its record, readable without knowing PDF, and tells who made it but not when', async (context) => {
    requireWitness(context, 'qpdf');
    const record = { ...RECORD, pixelSha256: hashPixels(opaque) };
    const bytes = await write([pageOf(opaque)], { record });
    expect(readPrintRecord(bytes)).toEqual(record);
    const pdf = readPdf(bytes);
    expect(pdf.follow(pdf.catalog['/Metadata'])).toMatchObject({ '/Type': '/Metadata', '/Subtype': '/XML' });
    expect(Object.keys(pdf.info).sort()).toEqual(['/Creator', '/Producer']);
  });

  it('gives the same bytes for the same input, and another identifier for another', async (context) => {
    requireWitness(context, 'qpdf');
    const [one, same] = [await write([pageOf(clear)]), await write([pageOf(clear)])];
    expect(Buffer.from(one).equals(same)).toBe(true);
    const other = await write([pageOf(clear, { heightMm: 298 })]);
    const idOf = (bytes: Uint8Array) => readPdf(bytes).trailer['/ID'];
    expect(idOf(other)).not.toEqual(idOf(one));
  });

  it('takes no picture of a kind that it would have to change', async () => {
    const gray = createRaster({ widthPx: 2, heightPx: 2, model: 'gray', hasAlpha: false, depth: 8 });
    await expect(write([pageOf(gray)])).rejects.toThrow('8-bit');
    const deep = createRaster({ widthPx: 2, heightPx: 2, model: 'rgb', hasAlpha: false, depth: 16 });
    await expect(write([pageOf(deep)])).rejects.toThrow('8-bit');
  });
});
