import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { type PrintRequest, parsePaper, preflight, type RectMm, readPrintRecord } from '../src/index.ts';
import { PLATE } from './checks/jobs.ts';
import { readPdf } from './formats/pdf-objects-read.ts';
import { askWitness, requireWitness } from './witness.ts';

/** Green with a red corner, so that a mirroring shows. */
const art = (() => {
  const png = new PNG({ width: 1300, height: 1300 });
  for (let pixel = 0; pixel < 1300 * 1300; pixel++) {
    const corner = pixel % 1300 < 400 && pixel < 1300 * 400;
    png.data.set(corner ? [200, 30, 30, 255] : [40, 120, 60, 255], pixel * 4);
  }
  return new Uint8Array(PNG.sync.write(png));
})();
const SHED_PRINTER = {
  name: 'shed printer',
  paper: { id: 'a4', widthMm: 210, heightMm: 297 },
  marginsMm: { left: 5, right: 5, lead: 5, trail: 5 },
  scaleCorrection: { scan: 1, feed: 1 },
  driverMirrors: false,
};
async function make(request: Partial<PrintRequest> = {}, format?: 'png' | 'pdf') {
  const { report, printReady } = await preflight(
    { path: 'tag.png', bytes: art },
    { blank: PLATE, fit: 'cover', ...request },
    { write: true, anyway: true, ...(format && { format }) },
  );
  return { report, bytes: printReady!.bytes };
}

const PPI = 600;
/** What poppler makes of the first page, as a printer would. */
function render(bytes: Uint8Array): PNG {
  const { stdout } = askWitness('pdftoppm', ['-r', String(PPI), '-png', 'a.pdf'], { 'a.pdf': bytes });
  return PNG.sync.read(stdout);
}

/** The same by a second renderer, which shares no code with poppler. */
function renderAgain(bytes: Uint8Array): PNG {
  const how = ['-q', '-dSAFER', '-dBATCH', '-dNOPAUSE', '-sDEVICE=png16m', `-r${PPI}`, '-sOutputFile=-'];
  return PNG.sync.read(askWitness('gs', [...how, 'a.pdf'], { 'a.pdf': bytes }).stdout);
}

const toPx = (mm: number) => Math.round((mm / 25.4) * PPI);
const toMm = (px: number) => (px / PPI) * 25.4;
type IsInk = (r: number, g: number, b: number) => boolean;
const isDark: IsInk = (r, g, b) => r + g + b < 384;
const isArt: IsInk = (r, g, b) => Math.max(r, g, b) - Math.min(r, g, b) > 40;

/** Box of the ink within a box of the page; mm. */
function findInk(page: PNG, { x, y, width, height }: RectMm, isInk: IsInk): RectMm {
  let [left, top, right, bottom] = [Infinity, Infinity, -1, -1];
  for (let row = toPx(y); row < toPx(y + height); row++)
    for (let column = toPx(x); column < toPx(x + width); column++) {
      const at = (row * page.width + column) * 4;
      if (!isInk(page.data[at]!, page.data[at + 1]!, page.data[at + 2]!)) continue;
      left = Math.min(left, column);
      top = Math.min(top, row);
      right = Math.max(right, column + 1);
      bottom = Math.max(bottom, row + 1);
    }
  return { x: toMm(left), y: toMm(top), width: toMm(right - left), height: toMm(bottom - top) };
}

describe('a sheet as PDF', () => {
  it('shows poppler rulers of 100 mm, ticks in the middle of the art, and the art at its size: within 0.1 mm', async (context) => {
    requireWitness(context, 'pdftoppm');
    const { bytes, report } = await make({ sheet: parsePaper('a4') });
    const page = render(bytes);
    const sheet = report.sheet!;
    for (const axis of ['x', 'y'] as const) {
      const ruler = sheet.marks.shown.find((mark) => mark.mark === 'ruler' && mark.axis === axis)!;
      const { x, y, width, height } = ruler.boxMm;
      // The words stand beside the ruler: its own strip is found by its long line, which all its ticks touch.
      const strip =
        axis === 'x'
          ? { x: x - 1, y: y - 0.5, width: width + 2, height: 4 }
          : { x: x - 0.5, y: y - 1, width: 4, height: height + 2 };
      const ink = findInk(page, strip, isDark);
      expect(Math.abs((axis === 'x' ? ink.width : ink.height) - 100)).toBeLessThan(0.1);
    }
    const [{ outlineMm, bleedMm }] = sheet.pieces as unknown as [(typeof sheet.pieces)[number]];
    const artBox = findInk(page, { x: 0, y: 0, width: 210, height: 297 * 0.9 }, isArt);
    for (const side of ['x', 'y', 'width', 'height'] as const)
      expect(Math.abs(artBox[side] - bleedMm[side])).toBeLessThan(0.1);
    const middle = { x: outlineMm.x + outlineMm.width / 2, y: outlineMm.y + outlineMm.height / 2 };
    for (const y of [bleedMm.y - 4, bleedMm.y + bleedMm.height + 2]) {
      const tick = findInk(page, { x: middle.x - 3, y, width: 6, height: 1 }, isDark);
      expect(Math.abs(tick.x + tick.width / 2 - middle.x)).toBeLessThan(0.1);
    }
    for (const x of [bleedMm.x - 4, bleedMm.x + bleedMm.width + 2]) {
      const tick = findInk(page, { x, y: middle.y - 3, width: 1, height: 6 }, isDark);
      expect(Math.abs(tick.y + tick.height / 2 - middle.y)).toBeLessThan(0.1);
    }
  });

  it('shows a second renderer, Ghostscript, the same ink in the same places, within 0.1 mm', async (context) => {
    requireWitness(context, 'pdftoppm', 'gs');
    const { bytes, report } = await make({ sheet: parsePaper('a4') });
    const [one, other] = [render(bytes), renderAgain(bytes)];
    expect(Math.abs(one.width - other.width)).toBeLessThanOrEqual(1);
    expect(Math.abs(one.height - other.height)).toBeLessThanOrEqual(1);
    for (const { boxMm } of report.sheet!.marks.shown) {
      const around = { x: boxMm.x - 0.5, y: boxMm.y - 0.5, width: boxMm.width + 1, height: boxMm.height + 1 };
      const [here, there] = [findInk(one, around, isDark), findInk(other, around, isDark)];
      for (const side of ['x', 'y', 'width', 'height'] as const)
        expect(Math.abs(here[side] - there[side])).toBeLessThan(0.1);
    }
    const whole = { x: 0, y: 0, width: 210, height: 297 * 0.9 };
    const [here, there] = [findInk(one, whole, isArt), findInk(other, whole, isArt)];
    for (const side of ['x', 'y', 'width', 'height'] as const)
      expect(Math.abs(here[side] - there[side])).toBeLessThan(0.1);
  });

  it('is what a sheet comes as: boxes of the blank and its bleed, the pixels of the piece’s own PNG, its record', async (context) => {
    requireWitness(context, 'qpdf');
    const { bytes, report } = await make({ sheet: parsePaper('a4') });
    const pdf = readPdf(bytes);
    const [{ outlineMm, bleedMm }] = report.sheet!.pieces as unknown as [
      { outlineMm: RectMm; bleedMm: RectMm },
    ];
    for (const [name, box] of [
      ['/TrimBox', outlineMm],
      ['/BleedBox', bleedMm],
    ] as const) {
      const expected = [box.x, 297 - box.y - box.height, box.x + box.width, 297 - box.y];
      for (const [i, points] of (pdf.pages[0]![name] as number[]).entries())
        expect(Math.abs((points / 72) * 25.4 - expected[i]!)).toBeLessThan(1e-9);
    }
    const piece = PNG.sync.read(Buffer.from((await make()).bytes));
    const picture = pdf.objects.find(({ dictionary }) => dictionary?.['/Subtype'] === '/Image')!;
    const samples = pdf.unpack(`${picture.number} 0 R`);
    const rgb = Buffer.from(piece.data.filter((_, i) => i % 4 !== 3));
    expect(samples.equals(rgb)).toBe(true);
    expect(readPrintRecord(bytes)).toMatchObject({ widthMm: 210, heightMm: 297, mirrored: true });
  });

  it('is a page of the bleed’s box for a piece alone', async (context) => {
    requireWitness(context, 'qpdf');
    const [page] = readPdf((await make({}, 'pdf')).bytes).pages;
    for (const [i, points] of (page!['/MediaBox'] as number[]).entries())
      expect((points / 72) * 25.4).toBeCloseTo([0, 0, 106, 106][i]!, 9);
    for (const [i, points] of (page!['/TrimBox'] as number[]).entries())
      expect((points / 72) * 25.4).toBeCloseTo([3, 3, 103, 103][i]!, 9);
  });

  it('is longer on an axis that prints too short, on a page of the same size', async (context) => {
    requireWitness(context, 'pdftoppm', 'qpdf');
    const printer = { ...SHED_PRINTER, scaleCorrection: { scan: 1, feed: 1.008 } };
    const { bytes } = await make({ sheet: parsePaper('a4'), printer });
    for (const [i, points] of (readPdf(bytes).pages[0]!['/MediaBox'] as number[]).entries())
      expect((points / 72) * 25.4).toBeCloseTo([0, 0, 210, 297][i]!, 9);
    const artBox = findInk(render(bytes), { x: 0, y: 0, width: 210, height: 297 * 0.9 }, isArt);
    expect(Math.abs(artBox.width - 106)).toBeLessThan(0.1);
    expect(Math.abs(artBox.height - 106 * 1.008)).toBeLessThan(0.1);
  });

  it('is the mirror image of itself for a driver that mirrors', async (context) => {
    requireWitness(context, 'pdftoppm');
    const sheet = parsePaper('a4');
    const plain = render((await make({ sheet, printer: SHED_PRINTER })).bytes);
    const other = render((await make({ sheet, printer: { ...SHED_PRINTER, driverMirrors: true } })).bytes);
    let differing = 0;
    for (let y = 0; y < plain.height; y++)
      for (let x = 0; x < plain.width; x++) {
        const one = plain.data[(y * plain.width + x) * 4]!;
        const two = other.data[(y * plain.width + plain.width - 1 - x) * 4]!;
        if (Math.abs(one - two) > 128) differing++;
      }
    // Edges that fall between two pixels are rounded the other way.
    expect(differing / (plain.width * plain.height)).toBeLessThan(0.002);
  });
});
