import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { BlankRecord } from '../src/catalogue/records.ts';
import { encodeSheet, encodeSheetsAsPdf } from '../src/compose-sheet.ts';
import { readPrintRecord } from '../src/formats/print-record.ts';
import { judgePiece } from '../src/judge-piece.ts';
import { laySheets, laySheetsGivingWay } from '../src/lay-sheets.ts';
import { preflight } from '../src/preflight.ts';
import { mirrorRaster } from '../src/raster/mirror.ts';
import { readPrinterProfile } from '../src/read-printer-profile.ts';
import { parsePaper } from '../src/sheet/parse-paper.ts';
import type { SheetOrder } from '../src/sheet-orders.ts';
import { PLATE } from './checks/jobs.ts';
import { readPdf } from './formats/pdf-objects-read.ts';
import { COATED_REFERENCE } from './icc/coated-reference.ts';
import { requireWitness } from './witness.ts';

/** Green with a red corner, so that a turn or a mirroring shows. */
function artOf(widthPx: number, heightPx: number): Uint8Array {
  const png = new PNG({ width: widthPx, height: heightPx });
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++)
      png.data.set([x < 90 && y < 60 ? 200 : x % 251, 30 + (y % 97), 60, 255], (y * widthPx + x) * 4);
  return new Uint8Array(PNG.sync.write(png));
}
const SHEET = parsePaper('a5');
const BLANK: BlankRecord = { ...PLATE, outline: { shape: 'rect', widthMm: 60, heightMm: 40 } };
const TALL: BlankRecord = { ...BLANK, outline: { shape: 'rect', widthMm: 60, heightMm: 130 } };
const REQUEST = { blank: BLANK, fit: 'cover', sheet: SHEET, ppi: 150 } as const;
const ORDER = { copies: 1, pair: false, mayTurn: false } as const;
const judge = (art: Uint8Array, more = {}) =>
  judgePiece({ path: 'tag.png', bytes: art }, { ...REQUEST, ...more }, { anyway: true });

interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => readonly number[];
}
function pixelsOf({ width, height, data }: PNG): Pixels {
  return {
    width,
    height,
    at: (x, y) => [...data.subarray((y * width + x) * 4, (y * width + x) * 4 + 3)],
  };
}
const mirrored = (one: Pixels): Pixels => ({ ...one, at: (x, y) => one.at(one.width - 1 - x, y) });
/** Clockwise: what was the left column from the foot up is the top row. */
const turned = (one: Pixels): Pixels => ({
  width: one.height,
  height: one.width,
  at: (x, y) => one.at(y, one.height - 1 - x),
});

async function bareOf(art: Uint8Array, more = {}): Promise<Pixels> {
  const { sheet: _, ...alone } = { ...REQUEST, ...more } as typeof REQUEST;
  const { printReady } = await preflight({ path: 'tag.png', bytes: art }, alone, {
    write: true,
    anyway: true,
  });
  return pixelsOf(PNG.sync.read(Buffer.from(printReady!.bytes)));
}

function countDifferences(page: Pixels, piece: Pixels, left: number, top: number): number {
  let differences = 0;
  for (let y = 0; y < piece.height; y += 1)
    for (let x = 0; x < piece.width; x += 1)
      if (page.at(left + x, top + y).join() !== piece.at(x, y).join()) differences += 1;
  return differences;
}

async function lay(orders: readonly SheetOrder[], driverMirrors = false) {
  const printer = driverMirrors
    ? {
        printer: {
          name: 'shed',
          paper: { id: 'a5', widthMm: 148, heightMm: 210 },
          marginsMm: { left: 6.35, right: 6.35, lead: 6.35, trail: 6.35 },
          scaleCorrection: { scan: 1, feed: 1 },
          driverMirrors,
        },
      }
    : {};
  const laid = laySheets(orders, { ...REQUEST, ...printer }, { gutterMm: 3 });
  const pages = await Promise.all(
    laid.sheets.map(async (sheet) =>
      pixelsOf(PNG.sync.read(Buffer.from(await encodeSheet(sheet, { driverMirrors })))),
    ),
  );
  return { ...laid, pages };
}

const ART = artOf(430, 290);

/** The pieces of all pages, in the order of their orders. */
async function lyingOf(orders: readonly SheetOrder[], driverMirrors = false) {
  const { sheets, pages } = await lay(orders, driverMirrors);
  return sheets.flatMap(({ page, pieces }, number) =>
    pieces.map((told, at) => ({ ...told, place: page.pieces[at]!, page: pages[number]!, number })),
  );
}

describe('a sheet of several pieces', () => {
  it('holds the very pixels of each piece, a pair exactly mirrored and on one page', async () => {
    const piece = await judge(ART);
    const bare = await bareOf(ART);
    const lying = await lyingOf([{ ...ORDER, sides: [piece], copies: 3, pair: true }]);
    expect(lying.map(({ copy, mirroredDesign }) => [copy, mirroredDesign])).toEqual([
      [1, false],
      [1, true],
      [2, false],
      [2, true],
      [3, false],
      [3, true],
    ]);
    for (const { place, page, mirroredDesign } of lying)
      expect(countDifferences(page, mirroredDesign ? mirrored(bare) : bare, place.xPx, place.yPx)).toBe(0);
    for (const copy of [1, 2, 3])
      expect(new Set(lying.filter((one) => one.copy === copy).map(({ number }) => number)).size).toBe(1);
  });

  it('is the same where the packing gives way, and none where that ends it', async () => {
    const orders = [{ ...ORDER, sides: [await judge(ART)], copies: 30, pair: true }];
    const layout = { gutterMm: 3 };
    let asked = 0;
    const count = () => {
      asked += 1;
      return undefined;
    };
    const laid = laySheets(orders, REQUEST, layout);
    expect(await laySheetsGivingWay(orders, REQUEST, layout, count)).toEqual(laid);
    expect(asked).toBeGreaterThan(laid.sheets.length);
    const ended = laySheetsGivingWay(orders, REQUEST, layout, () => Promise.reject(new Error('ended')));
    await expect(ended).rejects.toThrow('ended');
  });

  it('turns a piece exactly, and only where it may be turned', async () => {
    const wide = { blank: { ...BLANK, outline: { shape: 'rect', widthMm: 180, heightMm: 30 } } } as const;
    const art = artOf(1100, 215);
    const bare = await bareOf(art, wide);
    const piece = await judge(art, wide);
    const square = await judge(artOf(400, 400), { blank: TALL });
    const upright = { ...ORDER, sides: [square] };
    const lying = await lyingOf([upright, { ...ORDER, sides: [piece], mayTurn: true }]);
    expect(lying.map(({ number, place }) => [number, place.turn])).toEqual([
      [0, 0],
      [0, 90],
    ]);
    const { page, place } = lying[1]!;
    expect(countDifferences(page, turned(bare), place.xPx, place.yPx)).toBe(0);
    const stiff = await lyingOf([upright, { ...ORDER, sides: [piece] }]);
    expect(stiff.map(({ number, place }) => [number, place.turn])).toEqual([
      [0, 0],
      [1, 0],
    ]);
    // What the driver mirrors back lies on the paper as before.
    const driven = { ...wide, printer: { driverMirrors: true } };
    const back = await lyingOf(
      [
        {
          ...ORDER,
          sides: [await judge(artOf(400, 400), { blank: TALL, printer: { driverMirrors: true } })],
        },
        { ...ORDER, sides: [await judge(art, driven)], mayTurn: true },
      ],
      true,
    );
    const sent = back[1]!;
    expect(sent.place.turn).toBe(90);
    expect(sent.place.outlineMm).toEqual(place.outlineMm);
    expect(countDifferences(mirrored(sent.page), turned(bare), place.xPx, place.yPx)).toBe(0);
  });

  it('leaves out what its checks stop, and both sides where one of them is at fault', async () => {
    const good = await judge(ART);
    const blurred = await judgePiece({ path: 'blur.png', bytes: artOf(40, 30) }, REQUEST);
    const broken = await judgePiece({ path: 'cut.png', bytes: ART.slice(0, 400) }, REQUEST);
    const { sheets, leftOut } = await lay([
      { ...ORDER, sides: [good, blurred], copies: 3 },
      { ...ORDER, sides: [broken], pair: true },
      { ...ORDER, sides: [good] },
    ]);
    expect(leftOut).toEqual([
      { artwork: 'tag.png', blank: 'test-plate', reason: 'other-side', copies: 3 },
      { artwork: 'blur.png', blank: 'test-plate', reason: 'stop', copies: 3 },
      { artwork: 'cut.png', blank: 'test-plate', reason: 'unreadable', copies: 2 },
    ]);
    expect(sheets.map(({ pieces }) => pieces.length)).toEqual([1]);
  });

  it('says in its record that it is ours, and of which art and blanks', async () => {
    const piece = await judge(ART);
    const { sheets } = laySheets([{ ...ORDER, sides: [piece], copies: 4 }], REQUEST, { gutterMm: 3 });
    const record = readPrintRecord(await encodeSheet(sheets[0]!));
    expect(record).toMatchObject({
      blankId: 'test-plate',
      sourceSha256: piece.report.artwork.sha256,
      widthMm: sheets[0]!.page.sizeMm.width,
      heightMm: sheets[0]!.page.sizeMm.height,
    });
  });

  it('in the inks of a printer is a PDF with the very inks of the piece’s own file, mirrored for a pair; no picture', async (context) => {
    requireWitness(context, 'qpdf');
    const conversion = readPrinterProfile(COATED_REFERENCE, 'mine.icc');
    const piece = await judge(ART, { conversion });
    const { raster } = piece.printed!.print;
    const { sheets } = laySheets([{ ...ORDER, sides: [piece], pair: true }], REQUEST, { gutterMm: 3 });
    const pdf = readPdf(await encodeSheetsAsPdf(sheets, { conversion }));
    const images = pdf.objects.filter(({ dictionary }) => dictionary?.['/Subtype'] === '/Image');
    const samples = images.map(({ number }) => pdf.unpack(`${number} 0 R`));
    expect(samples.map((inks) => inks.length)).toEqual([raster.data.length, raster.data.length]);
    expect(samples[0]!.equals(Buffer.from(raster.data))).toBe(true);
    expect(samples[1]!.equals(Buffer.from(mirrorRaster(raster).data))).toBe(true);
    await expect(encodeSheet(sheets[0]!, { conversion })).rejects.toMatchObject({ code: 'bad-option' });
  });
});
