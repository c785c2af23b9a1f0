import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  appendFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { appendLine } from '../../cli/output/append-line.ts';
import { findBlank, readLedger } from '../../src/index.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder, readText } from './temp-folder.ts';

const LEDGER = 'blankcheck-ledger.jsonl';
const ART = makeArt([40, 120, 60], 300);
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const TILE = ['record', '--blank', 'tile-ceramic-8in', '--result', '4'];

describe('blankcheck record', () => {
  it('adds one line with all that was said', async () => {
    const cwd = makeFolder({ 'pear.png': ART, 'pear.jpg': 'a photo' });
    const words =
      '--art pear.png --lot 7 --measured 197x197mm --printer shed --paper coated --temperature 400F --platen-temperature 196C --time 1min30s --pressure firm --defect specks,faded --photo pear.jpg --date 2026-03-14';
    const run = await runMain([...TILE, ...words.split(' '), '--note', 'two\nlines'], { cwd });
    expect(run).toEqual({ code: 0, stdout: `${LEDGER}\n`, stderr: '' });
    expect(readText(cwd, LEDGER).split('\n')).toHaveLength(2);
    expect(JSON.parse(readText(cwd, LEDGER))).toEqual({
      schemaVersion: 1,
      at: '2026-03-14',
      blank: {
        id: 'tile-ceramic-8in',
        name: expect.stringContaining('tile'),
        lot: '7',
        measured: '197x197mm',
      },
      art: { file: 'pear.png', sha256: sha256(ART) },
      printer: 'shed',
      paper: 'coated',
      recipe: {
        temperature: { value: 400, unit: 'F' },
        platenTemperature: { value: 196, unit: 'C' },
        timeS: 90,
        pressure: 'firm',
      },
      result: 4,
      defects: ['faded', 'specks'],
      photo: { file: 'pear.jpg', sha256: sha256(Buffer.from('a photo')) },
      note: 'two\nlines',
    });
  });

  it('knows the artwork behind a print-ready file', async () => {
    const cwd = makeFolder({ 'pear.png': makeArt([40, 120, 60], 600) });
    await runMain(['pear.png', '--blank', '30x30mm', '--quiet'], { cwd });
    const run = await runMain(
      ['record', '--blank', '30x30mm', '--result', '5', '--art', 'print-ready/pear.30x30mm.png', '--json'],
      { cwd },
    );
    expect(JSON.parse(run.stdout).art.sha256).toBe(sha256(readFileSync(join(cwd, 'pear.png'))));
  });

  it('a missing photo is a note', async () => {
    const cwd = makeFolder();
    const run = await runMain([...TILE, '--photo', 'later.jpg'], { cwd });
    expect(run.code).toBe(0);
    expect(run.stderr).toContain('later.jpg');
    expect(JSON.parse(readText(cwd, LEDGER)).photo).toEqual({ file: 'later.jpg', sha256: null });
  });

  it('keeps a torn end, and begins a new line behind it', async () => {
    const cwd = makeFolder();
    await runMain(TILE, { cwd });
    const before = readText(cwd, LEDGER);
    appendFileSync(join(cwd, LEDGER), '{"schemaVersion":1,"at"');
    await runMain(TILE, { cwd });
    expect(readText(cwd, LEDGER).startsWith(`${before}{"schemaVersion":1,"at"\n`)).toBe(true);
    const { entries, faults } = await readLedger(readText(cwd, LEDGER));
    expect([entries.map(({ line }) => line), faults.map(({ line }) => line)]).toEqual([[1, 3], [2]]);
  });

  it.each([
    [['record', '--result', '4'], 'missing-blank'],
    [['record', '--blank', 'tile-ceramic-8in'], 'bad-result'],
    [[...TILE, 'pear.png'], 'bad-option'],
    [['record', '--blank', 'zeppelin', '--result', '4'], 'unknown-blank'],
    [['record', '--blank', 'mug-11oz', '--result', '6'], 'bad-option'],
    [[...TILE, '--temperature', '400'], 'temperature-without-unit'],
    [[...TILE, '--time', '60'], 'time-without-unit'],
    [[...TILE, '--pressure', 'hard'], 'bad-option'],
    [[...TILE, '--defect', 'ugly'], 'unknown-defect'],
    [[...TILE, '--measured', '197'], 'length-without-unit'],
    [[...TILE, '--date', '2026-02-30'], 'bad-date'],
    [[...TILE, '--art', 'nothing.png'], 'no-such-file'],
    [[...TILE, '--note', 'x'.repeat(2001)], 'bad-option'],
    [['history', '--json', '--csv'], 'bad-option'],
    [['history', '--ledger', 'nothing.jsonl'], 'no-such-file'],
    [['history', '--ledger', '.'], 'bad-ledger'],
  ])('%j is %s, and nothing is written', async (args, code) => {
    const cwd = makeFolder();
    const run = await runMain(args, { cwd });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
    expect(existsSync(join(cwd, LEDGER))).toBe(false);
  });

  it.each(['folder', 'no/such/ledger.jsonl'])(
    'a ledger that cannot be written (%s) is exit 1',
    async (ledger) => {
      const cwd = makeFolder();
      mkdirSync(join(cwd, 'folder'));
      const run = await runMain([...TILE, '--ledger', ledger], { cwd });
      expect(run).toMatchObject({ code: 1, stdout: '' });
      expect(run.stderr).toContain('[cannot-write]');
    },
  );
});

describe('a ledger that is none', () => {
  const blank = JSON.stringify(findBlank('tile-ceramic-8in'));
  const files = { 'a.png': ART, 'own.json': blank, 'notes.txt': 'pressed at 400F\n' };

  it.each([
    [['--art', 'a.png', '--ledger', 'a.png'], 1, 'cannot-write'],
    [['--photo', 'a.png', '--ledger', 'a.png'], 1, 'cannot-write'],
    [['--art', 'a.png', '--ledger', 'soft.jsonl'], 1, 'cannot-write'],
    [['--art', 'a.png', '--ledger', 'hard.jsonl'], 1, 'cannot-write'],
    [['--blank', 'own.json', '--ledger', 'own.json'], 1, 'cannot-write'],
    [['--ledger', 'a.png'], 2, 'bad-ledger'],
    [['--ledger', 'soft.jsonl'], 2, 'bad-ledger'],
    [['--ledger', 'own.json'], 2, 'bad-ledger'],
    [['--ledger', 'notes.txt'], 2, 'bad-ledger'],
    [['--art', 'prepared.png', '--ledger', 'prepared.png'], 1, 'cannot-write'],
    [['--ledger', 'prepared.png'], 2, 'bad-ledger'],
  ])('%j: exit %d, %s, and every file stays as it was', async (args, code, told) => {
    const cwd = makeFolder(files);
    symlinkSync('a.png', join(cwd, 'soft.jsonl'));
    linkSync(join(cwd, 'a.png'), join(cwd, 'hard.jsonl'));
    await runMain(['a.png', '--blank', '30x30mm', '--quiet'], { cwd });
    renameSync(join(cwd, 'print-ready', 'a.30x30mm.png'), join(cwd, 'prepared.png'));
    const names = [...Object.keys(files), 'prepared.png'];
    const before = names.map((name) => readFileSync(join(cwd, name)));
    const run = await runMain([...TILE, ...args], { cwd });
    expect(run).toMatchObject({ code, stdout: '' });
    expect(run.stderr).toContain(`[${told}]`);
    expect(names.map((name) => readFileSync(join(cwd, name)))).toEqual(before);
  });

  it.each([
    ['', []],
    ['\n', []],
    ['{"schemaV', [1]],
    ['{"schemaVersion":1,"at"', [1]],
    ['{"schemaVersion":2,"at":"2040-01-01"}\n', [1]],
  ])('but a start such as %j is one', async (start, bad) => {
    const cwd = makeFolder({ [LEDGER]: start });
    expect(await runMain(TILE, { cwd })).toMatchObject({ code: 0, stderr: '' });
    const { entries, faults } = await readLedger(readText(cwd, LEDGER));
    expect(readText(cwd, LEDGER).startsWith(start)).toBe(true);
    expect([entries.length, faults.map(({ line }) => line)]).toEqual([1, bad]);
  });

  it('and so are good lines behind a bad one', async () => {
    const cwd = makeFolder();
    await runMain(TILE, { cwd });
    writeFileSync(join(cwd, LEDGER), `scribble\n${readText(cwd, LEDGER)}`);
    expect((await runMain(TILE, { cwd })).code).toBe(0);
  });
});

describe('two writers', () => {
  const lines = 200;

  it('of one process lose and mix no line', async () => {
    const path = join(makeFolder(), LEDGER);
    const line = (index: number) => JSON.stringify({ index, filler: 'x'.repeat(5000) });
    await Promise.all(Array.from({ length: lines }, (_, index) => appendLine(path, LEDGER, line(index))));
    const written = readFileSync(path, 'utf8').trimEnd().split('\n').filter(Boolean);
    expect(written.map((text) => JSON.parse(text).index).sort((a, b) => a - b)).toEqual(
      Array.from({ length: lines }, (_, index) => index),
    );
  });

  it('of two processes neither', async () => {
    const cwd = makeFolder();
    const bin = join(import.meta.dirname, '..', '..', 'dist', 'cli', 'bin.js');
    const record = (note: string) =>
      promisify(execFile)(process.execPath, [bin, ...TILE, '--note', note.repeat(1500)], { cwd });
    for (let round = 0; round < 3; round += 1)
      await Promise.all(['a', 'b', 'c', 'd'].map((note) => record(note)));
    const { entries, faults } = await readLedger(readText(cwd, LEDGER));
    expect([entries.length, faults.length]).toEqual([12, 0]);
  });
});

describe('blankcheck history', () => {
  it('shows what fits, best first, and exports it', async () => {
    const cwd = makeFolder();
    await runMain([...TILE, '--note', '=1+1', '--date', '2026-03-14'], { cwd });
    await runMain(['record', '--blank', 'mug-11oz', '--result', '5', '--date', '2026-03-13'], { cwd });
    const json = await runMain(['history', '--json'], { cwd });
    expect(json).toMatchObject({ code: 0, stderr: '' });
    expect(JSON.parse(json.stdout)).toMatchObject({
      schemaVersion: 1,
      pressings: [
        { line: 2, result: 5 },
        { line: 1, result: 4 },
      ],
      badLines: [],
    });
    const table = await runMain(['history', 'tile', '--csv'], { cwd });
    expect(table.stdout.split('\r\n')).toHaveLength(3);
    expect(table.stdout).toContain(`"'=1+1"`);
    const text = await runMain(['history'], { cwd });
    expect(text.stdout.indexOf('mug-11oz')).toBeLessThan(text.stdout.indexOf('tile-ceramic-8in'));
  });

  it('reports bad lines by number, shows the rest and is exit 1', async () => {
    const cwd = makeFolder();
    await runMain(TILE, { cwd });
    appendFileSync(join(cwd, LEDGER), '\u001b[31m not a record\n');
    await runMain(TILE, { cwd });
    const run = await runMain(['history', '--json'], { cwd });
    expect(run.code).toBe(1);
    expect(run.stderr).toContain('line 2');
    expect(run.stderr).not.toContain('\u001b');
    const { pressings, badLines } = JSON.parse(run.stdout);
    expect([pressings.length, badLines.map(({ line }: { line: number }) => line)]).toEqual([2, [2]]);
  });

  it('nothing recorded yet, and nothing that fits, are answers', async () => {
    const cwd = makeFolder();
    expect(await runMain(['history'], { cwd })).toMatchObject({ code: 0, stdout: '' });
    await runMain(TILE, { cwd });
    expect(await runMain(['history', 'zeppelin'], { cwd })).toMatchObject({ code: 0, stdout: '' });
  });

  it('says how many of many it leaves out', async () => {
    const cwd = makeFolder();
    await runMain(TILE, { cwd });
    appendFileSync(join(cwd, LEDGER), readText(cwd, LEDGER).repeat(99));
    const { stdout } = await runMain(['history'], { cwd });
    expect(stdout.match(/4 of 5/g)).toHaveLength(40);
    expect(stdout).toContain('60 more');
  });
});

describe('blankcheck press', () => {
  const press = ['press', 'tile-ceramic-8in'];
  const ways = ['--temperature', '396F', '--time', '290s', '--pressure', 'medium'];

  it('shows the own best settings before those of the catalogue', async () => {
    const cwd = makeFolder();
    const bare = await runMain(press, { cwd });
    await runMain([...TILE, ...ways, '--note', 'fresh paper', '--ledger', 'own.jsonl'], { cwd });
    expect(await runMain(press, { cwd })).toEqual(bare);
    const { code, stdout } = await runMain([...press, '--ledger', 'own.jsonl'], { cwd });
    expect(code).toBe(0);
    expect(stdout.indexOf('290 s')).toBeGreaterThan(-1);
    expect(stdout.indexOf('290 s')).toBeLessThan(stdout.indexOf('Start with'));
    expect(stdout.replace(/Your own best\n(?: {2}.*\n)+\n/, '')).toBe(bare.stdout);
    const { own } = JSON.parse(
      (await runMain([...press, '--ledger', 'own.jsonl', '--json'], { cwd })).stdout,
    );
    expect(own).toMatchObject({ recorded: 1, best: { results: [4], recipe: { timeS: 290 } } });
  });

  it('finds the ledger of the folder by itself, and names its bad lines', async () => {
    const cwd = makeFolder();
    await runMain([...TILE, ...ways], { cwd });
    appendFileSync(join(cwd, LEDGER), 'torn\n');
    const { code, stdout, stderr } = await runMain(press, { cwd });
    expect(code).toBe(1);
    expect(stdout).toContain('290 s');
    expect(stderr).toContain('line 2');
  });

  it('says that none went well yet', async () => {
    const cwd = makeFolder();
    await runMain(['record', '--blank', 'tile-ceramic-8in', '--result', '2', ...ways], { cwd });
    const { stdout } = await runMain(press, { cwd });
    expect(stdout).not.toContain('290 s');
    const { own } = JSON.parse((await runMain([...press, '--json'], { cwd })).stdout);
    expect(own).toEqual({ recorded: 1, best: null });
  });
});
