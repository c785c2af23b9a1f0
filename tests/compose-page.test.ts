import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { PrintRequest } from '../src/check-artwork.ts';
import { readPrintRecord } from '../src/formats/print-record.ts';
import { preflight } from '../src/preflight.ts';
import { toRunReportJson } from '../src/reports/run-report-json.ts';
import { summarise } from '../src/reports/summary.ts';
import { MARK_KINDS } from '../src/sheet/marks/mark-kinds.ts';
import { parsePaper } from '../src/sheet/parse-paper.ts';
import { PLATE } from './checks/jobs.ts';
import { findSchemaFaults } from './reports/report-schema.ts';
import { askWitness, requireWitness } from './witness.ts';

/** Green with a red corner, so that a turn or a mirroring shows. */
const art = (() => {
  const png = new PNG({ width: 1300, height: 1300 });
  for (let pixel = 0; pixel < 1300 * 1300; pixel++) {
    const corner = pixel % 1300 < 400 && pixel < 1300 * 400;
    png.data.set(corner ? [200, 30, 30, 255] : [40, 120, 60, 255], pixel * 4);
  }
  return new Uint8Array(PNG.sync.write(png));
})();
const make = async (request: Partial<PrintRequest> = {}, format: 'png' | 'tiff' = 'png') => {
  const asked = { blank: PLATE, fit: 'cover', ...request } as const;
  const { report, printReady } = await preflight({ path: 'art/tag.png', bytes: art }, asked, {
    write: true,
    anyway: true,
    format,
  });
  return { report, bytes: printReady!.bytes };
};

describe('a page', () => {
  it('holds the very pixels of the piece, at the density of the job, and says that it is ours', async () => {
    const { bytes: bare } = await make();
    const { bytes, report } = await make({ sheet: parsePaper('a4') });
    const piece = PNG.sync.read(Buffer.from(bare));
    const page = PNG.sync.read(Buffer.from(bytes));
    expect([page.width, page.height]).toEqual([2480, 3508]);
    const { xPx, yPx } = report.sheet!.pieces[0]!;
    for (let row = 0; row < piece.height; row++) {
      const from = ((yPx + row) * page.width + xPx) * 4;
      const same = page.data
        .subarray(from, from + piece.width * 4)
        .equals(piece.data.subarray(row * piece.width * 4, (row + 1) * piece.width * 4));
      expect(same).toBe(true);
    }
    const record = readPrintRecord(bytes)!;
    const run = {
      schemaVersion: 1,
      program: { name: 'blankcheck', version: '0.1.0' },
      summary: summarise([report], 0),
      results: [report],
    } as const;
    expect(findSchemaFaults(JSON.parse(toRunReportJson(run)))).toEqual([]);
    expect(record).toMatchObject({ blankId: 'test-plate', widthMm: 210, heightMm: 297, mirrored: true });
  });

  it('cuts a roll so that every mark finds room beside the piece, and after its ink where none is wanted', async () => {
    const { report } = await make({ sheet: parsePaper('roll:330mm') });
    expect(report.sheet!.marks.dropped).toEqual([]);
    const [place] = report.sheet!.pieces;
    const bare = await make({ sheet: parsePaper('roll:330mm'), omitMarks: MARK_KINDS });
    const inkedMm = place!.bleedMm.height + 2 * 6.35;
    for (const [{ sizeMm }, heightMm] of [
      [report.sheet!, inkedMm + 55],
      [bare.report.sheet!, inkedMm],
    ] as const) {
      expect(sizeMm.width).toBe(330);
      expect(sizeMm.height).toBeCloseTo(heightMm, 9);
    }
  });

  it('draws the ruler at its length: the ends of its ink are 100 mm apart within a pixel', async () => {
    const { bytes, report } = await make({ sheet: parsePaper('a4') });
    const ruler = report.sheet!.marks.shown.find(({ mark, axis }) => mark === 'ruler' && axis === 'x')!;
    expect(ruler.lengthMm).toBe(100);
    const page = PNG.sync.read(Buffer.from(bytes));
    const toPx = (mm: number) => Math.round((mm / 25.4) * 300);
    const { x, y, width, height } = ruler.boxMm;
    // The row with the most ink is the ruler's own line.
    let longest = 0;
    for (let row = toPx(y); row < toPx(y + height); row++) {
      let first = -1;
      let last = -1;
      let ink = 0;
      for (let column = toPx(x) - 2; column < toPx(x + width) + 2; column++)
        if (page.data[(row * page.width + column) * 4]! < 128) {
          if (first < 0) first = column;
          last = column;
          ink++;
        }
      if (ink > 0.9 * (last - first) && last - first > longest) longest = last + 1 - first;
    }
    expect(Math.abs((longest * 25.4) / 300 - 100)).toBeLessThan(0.1);
  });

  it('leaves out the marks that are not wanted, and says so', async () => {
    const omitMarks = ['ruler', 'step-wedge'] as const;
    const { report } = await make({ sheet: parsePaper('a4'), omitMarks });
    const { shown, dropped } = report.sheet!.marks;
    expect(shown.filter(({ mark }) => mark === 'ruler' || mark === 'step-wedge')).toEqual([]);
    expect(dropped.filter(({ reason }) => reason === 'off')).toEqual(
      omitMarks.map((mark) => ({ mark, reason: 'off' })),
    );
  });

  it('writes nothing for a sheet that does not take the piece, whatever it is told', async () => {
    const source = { path: 'tag.png', bytes: art };
    const asked = { blank: PLATE, fit: 'cover', sheet: parsePaper('a6') } as const;
    const { report, printReady } = await preflight(source, asked, { write: true, anyway: true });
    expect(report.status).toBe('stop');
    expect(printReady).toBeNull();
    expect(report.sheet).toBeUndefined();
  });

  it('gives the same bytes for the same input, also as TIFF', async () => {
    const asked = { sheet: parsePaper('a5'), ppi: 100 };
    const [one, other] = [await make(asked, 'tiff'), await make(asked, 'tiff')];
    expect(Buffer.from(one.bytes).equals(other.bytes)).toBe(true);
  });

  it('shows exiftool another density where the feed is corrected, so that the page keeps its size', async (context) => {
    requireWitness(context, 'exiftool');
    const printer = {
      name: 'shed printer',
      paper: { id: 'a5', widthMm: 148, heightMm: 210 },
      marginsMm: { left: 5, right: 5, lead: 5, trail: 5 },
      scaleCorrection: { scan: 1, feed: 1.004 },
      driverMirrors: false,
    };
    const sheet = parsePaper('a5');
    for (const format of ['png', 'tiff'] as const) {
      const { bytes } = await make({ sheet, printer, ppi: 100 }, format);
      const file = `page.${format}`;
      const { stdout } = askWitness('exiftool', ['-j', '-n', file], { [file]: bytes });
      const [told] = JSON.parse(stdout.toString('utf8'));
      const perInch = format === 'png' ? 39.3700787 : 1;
      const [x, y] =
        format === 'png'
          ? [told.PixelsPerUnitX / perInch, told.PixelsPerUnitY / perInch]
          : [told.XResolution, told.YResolution];
      expect(x).toBeCloseTo(100, 1);
      expect(y).toBeCloseTo(100 / 1.004, 1);
      // Half a pixel of 0.254 mm.
      expect(Math.abs((told.ImageHeight / y) * 25.4 - 210)).toBeLessThan(0.14);
      expect(Math.abs((told.ImageWidth / x) * 25.4 - 148)).toBeLessThan(0.14);
    }
  });
});
