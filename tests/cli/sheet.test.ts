import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { RunReport } from '../../src/index.ts';
import { expectGolden } from '../golden.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, readText } from './temp-folder.ts';

const ART = makeArt();
const COARSE = makeArt([200, 60, 40], 8);
const TAG = ['--blank', '30x40mm', '--width', '2mm', '--ppi', '72', '--format', 'png'];
const SHEET = ['sheet', 'basil.png', ...TAG, '--sheet', 'a5'];

/** What a second program says of the size of a page. */
function sizeInPoints(bytes: Buffer, format: string): readonly [number, number] {
  if (format !== 'pdf') {
    const { stdout } = askWitness('identify', ['-format', '%w %h', `a.${format}`], {
      [`a.${format}`]: bytes,
    });
    return String(stdout).split(' ').map(Number) as [number, number];
  }
  const told = String(askWitness('pdfinfo', ['a.pdf'], { 'a.pdf': bytes }).stdout);
  const [, width, height] = /Page size: +([\d.]+) x ([\d.]+) pts/.exec(told)!;
  return [Number(width), Number(height)];
}

const reportOf = (stdout: string) => JSON.parse(stdout) as RunReport;

describe('sheet', () => {
  it('writes one page for all copies and names it, as JSON that its schema takes', async () => {
    const cwd = makeFolder({ 'basil.png': ART, 'mint.png': makeArt([10, 90, 10]) });
    const { code, stdout } = await runMain(
      ['sheet', 'basil.png', 'mint.png', ...TAG, '--sheet', 'a5', '--copies', '3', '--pair', '--json'],
      { cwd },
    );
    expect(code).toBe(0);
    const report = reportOf(stdout);
    expect(findSchemaFaults(report)).toEqual([]);
    expect(report.summary).toMatchObject({ artworks: 2, ready: 2 });
    const sheets = report.sheets as unknown as {
      page: number;
      pieces: { artwork: string; copy: number; mirroredDesign: boolean; turn: number }[];
      output: { path: string; widthPx: number };
    }[];
    const pieces = sheets.flatMap((sheet) => sheet.pieces);
    expect(pieces).toHaveLength(12);
    expect(
      pieces.filter(({ artwork, mirroredDesign }) => artwork === 'mint.png' && mirroredDesign),
    ).toHaveLength(3);
    expect(pieces.every(({ turn }) => turn === 0)).toBe(true);
    expect(sheets.map(({ output }) => output.path)).toEqual(['print-ready/basil.and-1-more.sheet-a5.png']);
    expect(listFiles(cwd)).toEqual(['basil.png', 'mint.png', 'print-ready/basil.and-1-more.sheet-a5.png']);
  });

  it('numbers several pages, gives their paths on standard output, and the same bytes again', async () => {
    const cwd = makeFolder({ 'basil.png': ART });
    const words = [...SHEET, '--copies', '30'];
    const first = await runMain(words, { cwd });
    expect([first.code, first.stdout]).toEqual([
      0,
      'print-ready/basil.sheet-a5.1-of-3.png\nprint-ready/basil.sheet-a5.2-of-3.png\nprint-ready/basil.sheet-a5.3-of-3.png\n',
    ]);
    const before = readText(cwd, 'print-ready/basil.sheet-a5.2-of-3.png');
    const refused = await runMain(words, { cwd });
    expect([refused.code, refused.stdout]).toEqual([1, '']);
    expect(refused.stderr).toContain('file-exists');
    expect((await runMain([...words, '--force'], { cwd })).code).toBe(0);
    expect(readText(cwd, 'print-ready/basil.sheet-a5.2-of-3.png')).toBe(before);
  });

  it('leaves out a piece that fails its checks, names it, prints the others: exit 1', async () => {
    const cwd = makeFolder({ 'basil.png': ART, 'blur.png': COARSE, 'cut.png': ART.slice(0, -20) });
    const words = ['sheet', 'basil.png', 'blur.png', 'cut.png', ...TAG, '--sheet', 'a5', '--copies', '2'];
    const { code, stdout, stderr } = await runMain([...words, '--json', '--fail-on', 'never'], { cwd });
    expect(code).toBe(1);
    const report = reportOf(stdout);
    expect(findSchemaFaults(report)).toEqual([]);
    expect(report.leftOut).toEqual([
      { artwork: 'blur.png', blank: '30x40mm', reason: 'stop', copies: 2 },
      { artwork: 'cut.png', blank: '30x40mm', reason: 'unreadable', copies: 2 },
    ]);
    expect(report.sheets).toHaveLength(1);
    expect(listFiles(cwd)).toContain('print-ready/basil.and-2-more.sheet-a5.png');
    expectGolden('reports/sheets.txt', stderr);
  });

  it('of many artworks tells what needs a look alone, and is named after the first that could be read', async () => {
    const beds = Array.from({ length: 20 }, (_, index) => [`beds/bed-${index + 10}.png`, ART] as const);
    const cwd = makeFolder({
      ...Object.fromEntries(beds),
      'beds/a.png': ART.slice(0, -20),
      'beds/b.txt': 'x',
    });
    // A file of our own among them is no art, and must not change the name.
    await runMain(['prepare', 'beds/bed-10.png', ...TAG, '--out', 'beds'], { cwd });
    const { code, stdout, stderr } = await runMain(['sheet', 'beds', ...TAG, '--sheet', 'a3'], { cwd });
    expect([code, stdout]).toEqual([1, 'beds/print-ready/bed-10.and-20-more.sheet-a3.png\n']);
    expect(stderr.match(/^[A-Z ]+: beds\/.*$/gm)).toEqual(['CANNOT READ: beds/a.png']);
    expect(stderr).toMatch(/^21 artworks: 20 READY TO PRINT, 1 CANNOT READ\nPassed over: 2 /m);
  });

  it('refuses a folder that holds nothing but files of our own, or nothing, and does the others', async () => {
    const cwd = makeFolder({ 'basil.png': ART, 'none/notes.txt': 'x' });
    await runMain(['prepare', 'basil.png', ...TAG, '--out', 'own'], { cwd });
    const words = [...TAG, '--sheet', 'a5', '--out', 'sheets'];
    const { code, stdout, stderr } = await runMain(['sheet', 'own', 'none', 'basil.png', ...words], { cwd });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr.match(/\[no-artwork-in-folder\]/g)).toHaveLength(2);
    expect(listFiles(cwd)).toContain('sheets/basil.sheet-a5.png');
    expect((await runMain(['sheet', 'own', ...words], { cwd })).code).toBe(2);
  });

  it('plans a dry run and writes nothing', async () => {
    const cwd = makeFolder({ 'basil.png': ART });
    const { code, stdout } = await runMain([...SHEET, '--copies', '5', '--dry-run', '--json'], { cwd });
    expect([code, reportOf(stdout).sheets?.[0]?.output]).toEqual([0, null]);
    expect(listFiles(cwd)).toEqual(['basil.png']);
  });

  it.for(['pdf', 'png', 'tiff'])('cuts a roll after its pieces and marks, as %s', async (format, context) => {
    requireWitness(context, 'pdfinfo', 'identify');
    const cwd = makeFolder({ 'basil.png': ART });
    const words = ['sheet', 'basil.png', '--blank', '30x40mm', '--width', '2mm', '--ppi', '72'];
    const { code, stdout, stderr } = await runMain(
      [...words, '--sheet', 'roll:300mm', '--copies', '20', '--format', format, '--json'],
      { cwd },
    );
    expect(code).toBe(0);
    if (format === 'pdf') expectGolden('reports/sheet-of-roll.txt', stderr);
    const [sheet, ...others] = reportOf(stdout).sheets!;
    expect(others).toEqual([]);
    const { path, widthMm, heightMm } = sheet!.output!;
    // 36 x 46 mm with the bleed: four rows of five along it, with 14 mm for marks and 6.35 mm bare; across, 187 mm.
    expect([widthMm, heightMm]).toEqual([Math.ceil(2 * 6.35 + 14 + 4 * 36 + 3 * 3), 300]);
    const [width, height] = sizeInPoints(readFileSync(join(cwd, path)), format);
    // pdfinfo tells thousandths of a point; a picture has whole pixels of 1/72 in.
    const slackPt = format === 'pdf' ? 0.005 : 0.51;
    expect(Math.abs(width - (widthMm / 25.4) * 72)).toBeLessThanOrEqual(slackPt);
    expect(Math.abs(height - (300 / 25.4) * 72)).toBeLessThanOrEqual(slackPt);
  });

  it('takes the paper and the resolution of the printer', async () => {
    const printer = { name: 'Shed', paper: 'a6', ppi: 100, driverMirrors: false };
    const cwd = makeFolder({ 'basil.png': ART, 'shed.json': JSON.stringify(printer) });
    const words = ['sheet', 'basil.png', '--blank', '30x40mm', '--width', '2mm', '--format', 'png'];
    expect((await runMain([...words, '--printer', 'shed.json'], { cwd })).code).toBe(0);
    const page = PNG.sync.read(readFileSync(join(cwd, 'print-ready/basil.sheet-a6.png')));
    expect([page.width, page.height]).toEqual([413, 583]);
  });

  it('sends the mirror image of the page, marks and all, where the printer’s record says that its driver mirrors', async () => {
    const pageFor = async (driverMirrors: boolean) => {
      const printer = { name: 'Shed', paper: '4x6in', ppi: 100, driverMirrors };
      const cwd = makeFolder({ 'basil.png': ART, 'shed.json': JSON.stringify(printer) });
      const words = ['sheet', 'basil.png', '--blank', '30x40mm', '--width', '2mm', '--format', 'png'];
      const { code, stdout } = await runMain([...words, '--printer', 'shed.json', '--json'], { cwd });
      expect(code).toBe(0);
      const { marks } = reportOf(stdout).sheets![0] as unknown as { marks: { mark: string }[] };
      const png = PNG.sync.read(readFileSync(join(cwd, reportOf(stdout).sheets![0]!.output!.path)));
      return { png, marks };
    };
    const [plain, driven] = [await pageFor(false), await pageFor(true)];
    // On the paper nothing changes: same marks, same places.
    expect(driven.marks).toEqual(plain.marks);
    const countUnlike = (mirrored: boolean) => {
      const { width, height, data } = plain.png;
      let unlike = 0;
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const other = mirrored ? width - 1 - x : x;
          const step = data[(y * width + x) * 4]! - driven.png.data[(y * width + other) * 4]!;
          if (Math.abs(step) > 100) unlike++;
        }
      return unlike;
    };
    // A page of whole pixels, so that marks cut the same parts of them; the witness alone is some hundred.
    expect(countUnlike(true)).toBeLessThan(20);
    expect(countUnlike(false)).toBeGreaterThan(500);
  });

  it.each([
    [['--sheet', 'a44'], 'unknown-sheet'],
    [[], 'missing-sheet'],
    [['--sheet', '10x12mm'], 'margins-too-large'],
    [['--sheet', 'a5', '--copies', '0'], 'bad-option'],
    [['--sheet', 'a5', '--copies', '2.5'], 'bad-option'],
    [['--sheet', 'a5', '--copies', '999999999'], 'bad-option'],
    [['--sheet', 'a5', '--gutter', '-1mm'], 'bad-length'],
    [['--sheet', 'a5', '--gutter', '3'], 'length-without-unit'],
    [['--sheet', 'a5', '--gutter', '400mm'], 'bad-option'],
    [['--sheet', 'a5', '--platen', 'large'], 'bad-size'],
    [['--sheet', 'a5', '--platen', 'round:90mm'], 'bad-size'],
    [['--sheet', 'roll:0mm'], 'bad-length'],
    [['--sheet', 'roll:10mm'], 'margins-too-large'],
    [['--sheet', 'a5', '--proof', 'proofs'], 'bad-option'],
  ])('%j is refused with %s, and nothing is written', async (words, code) => {
    const cwd = makeFolder({ 'basil.png': ART });
    const run = await runMain(['sheet', 'basil.png', ...TAG, ...words], { cwd });
    expect([run.code, run.stdout]).toEqual([2, '']);
    expect(run.stderr).toContain(`[${code}]`);
    expect(listFiles(cwd)).toEqual(['basil.png']);
  });
});
