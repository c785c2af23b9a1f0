import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { type RunReport, readSheetJob, turnOverBlank } from '../../src/index.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

const ART = makeArt();
const WORDS = ['--ppi', '72', '--format', 'png'];
const JOB = `{
  // the herb stall
  "sheet": "a5",
  "gutter": "2mm",
  "pieces": [
    { "art": "basil.png", "blank": "30x40mm", "width": "2mm", "copies": 3 },
    { "art": "mint.png", "blank": "round:25mm", "width": "2mm", "pair": true, "mayTurn": true },
    { "art": "basil.png", "secondSide": "back.png", "blank": "20x20mm", "width": "2mm", "copies": 2 },
  ],
}`;
const FILES = {
  'art/basil.png': ART,
  'art/mint.png': makeArt([9, 90, 9]),
  'art/back.png': makeArt([90, 9, 9]),
};

describe('a job file', () => {
  it('lists art, blanks, copies, pairs and second sides; files are looked for beside it', async () => {
    const cwd = makeFolder({ ...FILES, 'art/stall.json': JOB });
    const { code, stdout } = await runMain(['sheet', '--job', 'art/stall.json', ...WORDS, '--json'], { cwd });
    expect(code).toBe(0);
    const { sheets } = JSON.parse(stdout) as RunReport;
    const pieces = (
      sheets as unknown as {
        pieces: { artwork: string; blank: string; copy: number; mirroredDesign: boolean }[];
      }[]
    )
      .flatMap((sheet) => sheet.pieces)
      .map(({ artwork, blank, copy, mirroredDesign }) => [artwork, blank, copy, mirroredDesign]);
    expect(pieces).toEqual([
      ['art/basil.png', '30x40mm', 1, false],
      ['art/basil.png', '30x40mm', 2, false],
      ['art/basil.png', '30x40mm', 3, false],
      ['art/mint.png', 'round-25mm', 1, false],
      ['art/mint.png', 'round-25mm', 1, true],
      ['art/basil.png', '20x20mm', 1, false],
      ['art/back.png', '20x20mm', 1, false],
      ['art/basil.png', '20x20mm', 2, false],
      ['art/back.png', '20x20mm', 2, false],
    ]);
    const page = PNG.sync.read(readFileSync(join(cwd, 'art/print-ready/stall.sheet-a5.png')));
    expect([page.width, page.height].sort((a, b) => a - b)).toEqual([420, 595]);
  });

  it('keeps to its schema, by a second reader', async () => {
    const schema = JSON.parse(
      readFileSync(new URL('../../seeds/schema/sheet-job.schema.json', import.meta.url), 'utf8'),
    );
    const validate = new Ajv2020({ strict: true }).compile(schema as object);
    const { job } = await readSheetJob(JOB, 'stall.json');
    expect(validate(job)).toBe(true);
    expect(validate({ pieces: [{ art: 'basil.png', copies: 0 }] })).toBe(false);
  });

  it.each([
    ['{ "pieces": [\n{ "art": "basil.png" "copies": 2 }] }', 'bad-job', 'line 2: expected a comma'],
    ['{ "pieces": [] }', 'bad-job', 'line 1: pieces: expected a list of at least 1 entries'],
    ['[]', 'bad-job', 'line 1: expected one job as a JSON object'],
    [
      '{\n"pieces": [\n{ "art": "basil.png", "blank": "2x2cm",\n"copies": 0 }] }',
      'bad-job',
      'line 4: pieces[0].copies: expected a number of at least 1, found 0',
    ],
    [
      '{\n"pieces": [\n{ "art": "basil.png",\n"copys": 2 }] }',
      'bad-job',
      'line 4: pieces[0].copys: expected no such field (meant copies?)',
    ],
    [
      '{\n"pieces": [\n{ "art": "basil.png",\n"turn": 45 }] }',
      'bad-job',
      'line 4: pieces[0].turn: expected one of 0, 90, 180, 270',
    ],
    [
      '{\n"pieces": [\n{ "art": "basil.png", "blank": "2x2cm",\n"width": "30" }] }',
      'length-without-unit',
      'line 4, pieces[0].width:',
    ],
    [
      '{\n"pieces": [\n{ "art": "basil.png",\n"blank": "slat-rect" }] }',
      'unknown-blank',
      'line 4, pieces[0].blank:',
    ],
    ['{\n"pieces": [\n{ "art": "basil.png" }] }', 'missing-blank', 'line 3, pieces[0]:'],
    [
      '{\n"sheet": "a44", "pieces": [{ "art": "basil.png", "blank": "2x2cm" }] }',
      'unknown-sheet',
      'line 2, sheet:',
    ],
    [
      '{\n"sheet": "a5",\n"gutter": "-3mm", "pieces": [{ "art": "basil.png", "blank": "2x2cm" }] }',
      'bad-length',
      'line 3, gutter:',
    ],
    [
      '{ "sheet": "a5", "pieces": [{ "art": "mug.png", "blank": "2x2cm" }] }',
      'no-such-file',
      'line 1, pieces[0]:',
    ],
  ])('%j is refused with %s at its line, and nothing is written', async (text, code, place) => {
    const cwd = makeFolder({ 'basil.png': ART, 'stall.json': text });
    const words = text.includes('"sheet"') ? [] : ['--sheet', 'a5'];
    const run = await runMain(['sheet', '--job', 'stall.json', ...WORDS, ...words], { cwd });
    const told = run.stderr.replace(/\s+/g, ' ');
    expect([run.code, run.stdout]).toEqual([2, '']);
    expect(told).toContain(`[${code}]`);
    expect(told).toContain(place);
    expect(listFiles(cwd)).toEqual(['basil.png', 'stall.json']);
  });

  it('is one of the two: artworks beside it are refused', async () => {
    const cwd = makeFolder({ ...FILES, 'stall.json': JOB });
    expect((await runMain(['sheet', 'art/basil.png', '--job', 'stall.json', ...WORDS], { cwd })).code).toBe(
      2,
    );
  });
});

describe('turnOverBlank', () => {
  it('reverses outline and holes left to right, and twice gives the blank again', () => {
    const blank = {
      id: 'tag',
      name: 'Tag',
      surface: 'first',
      outline: {
        shape: 'polygon',
        widthMm: 40,
        heightMm: 60,
        pointsMm: [
          [0, 0],
          [40, 10],
          [40, 60],
          [0, 60],
        ],
      },
      holes: [{ use: 'cord', shape: 'circle', xMm: 8, yMm: 5, diameterMm: 4 }],
    } as const;
    const over = turnOverBlank(blank);
    expect(over.outline?.pointsMm).toEqual([
      [40, 60],
      [0, 60],
      [0, 10],
      [40, 0],
    ]);
    expect(over.holes?.[0]).toMatchObject({ xMm: 32, yMm: 5 });
    expect(turnOverBlank(over)).toEqual(blank);
  });
});
