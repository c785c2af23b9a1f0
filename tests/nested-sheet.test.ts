import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { findBlank } from '../src/catalogue/catalogue.ts';
import type { BlankRecord } from '../src/catalogue/records.ts';
import { encodeSheet, encodeSheetsAsPdf } from '../src/compose-sheet.ts';
import { type JudgedPiece, judgePiece } from '../src/judge-piece.ts';
import { type LaidSheet, laySheets } from '../src/lay-sheets.ts';
import { MARK_KINDS } from '../src/sheet/marks/mark-kinds.ts';
import { parsePaper } from '../src/sheet/parse-paper.ts';
import { askWitness, requireWitness } from './witness.ts';

/** A sleeve for a seedling pot, wide for its height: in a column the box of one reaches far over the next. */
const POT: BlankRecord = {
  ...findBlank('tumbler-20oz-tapered')!,
  id: 'seedling-pot',
  wrap: {
    ...findBlank('tumbler-20oz-tapered')!.wrap!,
    topDiameterMm: 80,
    bottomDiameterMm: 45,
    bodyHeightMm: 40,
    printHeightMm: 40,
    clearTopMm: 0,
    clearBaseMm: 0,
  },
  bleedMm: 3,
};
const PPI = 100;
const SHEET = parsePaper('roll:230mm');
const REQUEST = { blank: POT, fit: 'cover', sheet: SHEET, ppi: PPI } as const;

/** Ink to the last pixel, in stripes that tell pieces apart and show every shift. */
function artOf(red: number): Uint8Array {
  const png = new PNG({ width: 900, height: 200 });
  for (let y = 0; y < 200; y++)
    for (let x = 0; x < 900; x++) png.data.set([red, (x * 7) % 200, (y * 11) % 200, 255], (y * 900 + x) * 4);
  return new Uint8Array(PNG.sync.write(png));
}
const judgeAll = (more = {}) =>
  Promise.all(
    [20, 120, 220].map((red, at) =>
      judgePiece({ path: `${at}.png`, bytes: artOf(red) }, { ...REQUEST, ...more }, { anyway: true }),
    ),
  );

function lay(sides: readonly JudgedPiece[], gutterMm: number, more = {}): LaidSheet {
  const orders = sides.map((side) => ({ sides: [side], copies: 1, pair: false, mayTurn: false }));
  const { sheets, leftOut } = laySheets(orders, { ...REQUEST, ...more }, { gutterMm });
  expect([sheets.length, leftOut]).toEqual([1, []]);
  const { page } = sheets[0]!;
  expect(page.pieces.every(({ partMm }) => partMm)).toBe(true);
  const boxes = page.pieces.map(({ bleedMm }) => bleedMm);
  expect(boxes.slice(1).every(({ y }, at) => y < boxes[at]!.y + boxes[at]!.height - 5)).toBe(true);
  return sheets[0]!;
}

type See = (place: number, samples: Uint8Array) => void;

/** Every inked pixel of every piece as it is alone: its place among the samples of a page of four channels. */
function eachInked({ page, pieces }: LaidSheet, pageWidthPx: number, see: See): void {
  for (const [index, { xPx, yPx }] of page.pieces.entries()) {
    const { widthPx, heightPx, hasAlpha, data } = pieces[index]!.printed.print.raster;
    const channels = hasAlpha ? 4 : 3;
    for (let pixel = 0; pixel < widthPx * heightPx; pixel += 1) {
      const samples = data.subarray(pixel * channels, (pixel + 1) * channels) as Uint8Array;
      if (hasAlpha ? samples[3] === 0 : Math.min(samples[0]!, samples[1]!, samples[2]!) === 255) continue;
      see(((yPx + Math.floor(pixel / widthPx)) * pageWidthPx + xPx + (pixel % widthPx)) * 4, samples);
    }
  }
}

/** Samples of the page that are not those of the pieces alone: where one is inked its very own, else nothing. */
function countStrangers({ data, width }: PNG, sheet: LaidSheet): number {
  const { hasAlpha } = sheet.pieces[0]!.printed.print.raster;
  const wanted = new Uint8Array(data.length).fill(hasAlpha ? 0 : 255);
  const inked = new Uint8Array(data.length);
  let twice = 0;
  eachInked(sheet, width, (place, samples) => {
    twice += inked[place]!;
    inked[place] = 1;
    wanted.set(samples, place);
  });
  expect(twice).toBe(0);
  return wanted.reduce((strangers, sample, at) => strangers + (sample === data[at] ? 0 : 1), 0);
}
const BARE = { omitMarks: MARK_KINDS };
const read = (bytes: Uint8Array) => PNG.sync.read(Buffer.from(bytes));

describe('arcs in the hollows of others', () => {
  it.each([0, 3])(
    'have the very pixels of each alone, at a gutter of %s mm, and nothing else',
    async (gutterMm) => {
      const sheet = lay(await judgeAll(), gutterMm, BARE);
      expect(countStrangers(read(await encodeSheet(sheet)), sheet)).toBe(0);
    },
  );

  it('do so on a clear page', async () => {
    const sheet = lay(await judgeAll({ background: { r: 0, g: 0, b: 0, alpha: 0 } }), 3, BARE);
    expect(countStrangers(read(await encodeSheet(sheet)), sheet)).toBe(0);
  });

  it('do so where the driver mirrors the page', async () => {
    const printer = {
      name: 'shed',
      paper: { id: 'a4', widthMm: 210, heightMm: 297 },
      marginsMm: { left: 4, right: 9, lead: 6.35, trail: 6.35 },
      scaleCorrection: { scan: 1.004, feed: 0.997 },
      driverMirrors: true,
    };
    const sheet = lay(await judgeAll({ printer: { driverMirrors: true } }), 3, { ...BARE, printer });
    expect(countStrangers(read(await encodeSheet(sheet, { driverMirrors: true })), sheet)).toBe(0);
  });

  it('do not cover each other where the white of a printer is no white', async () => {
    const sheet = lay(await judgeAll(), 0, BARE);
    const tinted = {
      ...sheet,
      pieces: sheet.pieces.map((piece) => {
        const { raster } = piece.printed.print;
        const data = raster.data.map((sample, at, all) => {
          const first = at - (at % 3);
          return Math.min(all[first]!, all[first + 1]!, all[first + 2]!) === 255 ? 240 : sample;
        });
        return {
          ...piece,
          printed: { ...piece.printed, print: { ...piece.printed.print, raster: { ...raster, data } } },
        };
      }),
    };
    const page = read(await encodeSheet(tinted));
    let [lost, kept] = [0, 0];
    eachInked(sheet, page.width, (place, samples) => {
      if (samples.every((sample, at) => page.data[place + at] === sample)) kept += 1;
      else lost += 1;
    });
    expect(lost).toBe(0);
    expect(kept).toBeGreaterThan(100_000);
  });

  it('take 247 mm of a roll, and by their boxes 343 mm: what the guide says of six mugs', async () => {
    const blank = findBlank('mug-latte-12oz')!;
    const alongOf = async (background: { r: number; g: number; b: number; alpha: 1 }) => {
      const request = { ...REQUEST, blank, sheet: parsePaper('roll:24in'), background };
      const side = await judgePiece({ path: 'a.png', bytes: artOf(20) }, request, { anyway: true });
      const order = { sides: [side], copies: 6, pair: false, mayTurn: false };
      const { sheets } = laySheets([order], request, { gutterMm: 3 });
      return sheets.map(({ page: { orientation, sizeMm } }) =>
        orientation === 'portrait' ? sizeMm.height : sizeMm.width,
      );
    };
    expect(await alongOf({ r: 255, g: 255, b: 255, alpha: 1 })).toEqual([247]);
    // A ground that is printed covers the whole box, which nothing else may lie in.
    expect(await alongOf({ r: 255, g: 250, b: 220, alpha: 1 })).toEqual([343]);
  });

  it('are not laid so where a background is printed all over their boxes', async () => {
    const sides = await judgeAll({ background: { r: 200, g: 240, b: 200, alpha: 1 } });
    const orders = sides.map((side) => ({ sides: [side], copies: 1, pair: false, mayTurn: false }));
    const { sheets } = laySheets(orders, REQUEST, { gutterMm: 3 });
    expect(sheets.flatMap(({ page }) => page.pieces).some(({ partMm }) => partMm)).toBe(false);
  });

  it.for([false, true])(
    'are in a PDF just what poppler shows of each alone; driver mirrors: %s',
    async (driverMirrors, context) => {
      requireWitness(context, 'pdftoppm');
      const sheet = lay(await judgeAll({ printer: { driverMirrors } }), 3, BARE);
      const render = async (laid: LaidSheet) => {
        const bytes = await encodeSheetsAsPdf([laid], { driverMirrors });
        return PNG.sync.read(
          askWitness('pdftoppm', ['-r', '150', '-png', 'a.pdf'], { 'a.pdf': bytes }).stdout,
        );
      };
      const all = await render(sheet);
      const alone: PNG[] = [];
      for (const [index, { partMm: _, ...place }] of sheet.page.pieces.entries())
        alone.push(
          await render({ page: { ...sheet.page, pieces: [place] }, pieces: [sheet.pieces[index]!] }),
        );
      let most = 0;
      let inked = 0;
      for (let sample = 0; sample < all.data.length; sample += 1) {
        const own = Math.min(...alone.map(({ data }) => data[sample]!));
        most = Math.max(most, Math.abs(own - all.data[sample]!));
        if (own < 255) inked += 1;
      }
      // Where a picture ends between two pixels its white may come out a step darker.
      expect(most).toBeLessThanOrEqual(1);
      expect(inked).toBeGreaterThan(500_000);
    },
  );
});
