import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder, readText } from './temp-folder.ts';

const FILES = {
  'beds/basil.png': makeArt(),
  'beds/=cmd|calc.png': makeArt(),
  'beds/coarse.png': makeArt([200, 30, 30], 8),
  'beds/torn.png': makeArt().subarray(0, 60),
};
const WORDS = ['beds', '--blank', '60x60mm', '--width', '2mm'];

describe('--json-lines', () => {
  it('gives each result of --json as a line, then the summary', async () => {
    const cwd = makeFolder(FILES);
    const whole = JSON.parse((await runMain(['check', ...WORDS, '--json'], { cwd })).stdout);
    const { code, stdout } = await runMain(['check', ...WORDS, '--json-lines'], { cwd });
    const lines = stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as object);
    expect(code).toBe(1);
    expect(lines.slice(0, -1)).toEqual(whole.results);
    expect(lines.at(-1)).toEqual({ summary: whole.summary });
  });

  it('is refused beside --json', async () => {
    const { code, stderr } = await runMain([...WORDS, '--json', '--json-lines'], { cwd: makeFolder(FILES) });
    expect([code, stderr.includes('[bad-option]')]).toEqual([2, true]);
  });

  it('says nothing where a word names nothing', async () => {
    const { code, stdout } = await runMain(['check', 'nowhere.png', ...WORDS, '--json-lines'], {
      cwd: makeFolder(FILES),
    });
    expect([code, stdout]).toEqual([2, '']);
  });
});

describe('the table of a run', () => {
  it('has a line for each artwork, what needs attention first', async () => {
    const { stderr } = await runMain(['check', ...WORDS], { cwd: makeFolder(FILES) });
    const table = stderr.slice(stderr.indexOf('Verdict')).split('\n');
    expect(table[1]).toMatch(/^CANNOT READ +- +- +damaged +beds\/torn\.png$/);
    expect(table[2]).toMatch(/^STOP +2 x 2 mm +101 +effective-resolution\/below-stop +beds\/coarse\.png$/);
    expect(table[3]).toContain('beds/=cmd|calc.png');
    expect(table[4]).toContain('beds/basil.png');
    expect(table[5]).toBe('');
  });

  it('is not there for one artwork, nor when quiet', async () => {
    const cwd = makeFolder(FILES);
    const single = await runMain(['check', 'beds/basil.png', ...WORDS.slice(1)], { cwd });
    const quiet = await runMain(['check', ...WORDS, '--quiet'], { cwd });
    expect(`${single.stderr}${quiet.stderr}`).not.toContain('Worst finding');
  });

  it('stands for the reports of what is ready where there are many', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 21 }, (_, index) => [`beds/${index}.png`, makeArt()]),
    );
    const cwd = makeFolder({ ...many, ...FILES });
    const { stderr } = await runMain(['check', ...WORDS], { cwd });
    expect(stderr.match(/^ +Artwork /gm)).toHaveLength(1);
    expect(stderr.match(/^READY TO PRINT {2}/gm)).toHaveLength(23);
    // Once for all of them, those that are ready too; of each only how many.
    expect(stderr.match(/edge-detail/g)).toHaveLength(1);
    expect(stderr).toMatch(/^ +\[\?\] edge-detail: .*$/m);
    expect(stderr).toMatch(/^ +\[\?\] Not checked: \d+ of \d+ checks$/m);
    const quiet = await runMain(['check', ...WORDS, '--quiet', '--fail-on', 'advice'], { cwd });
    expect(quiet.stderr).toMatch(/^ +\[\?\] Not checked: .*edge-detail/m);
    expect(stderr).not.toContain('How to print');
    const prepared = await runMain(['prepare', ...WORDS, '--out', 'prints'], { cwd });
    expect(prepared.stderr.match(/^How to print them$/gm)).toHaveLength(1);
  });
});

describe('--csv', () => {
  it('writes a row for each artwork that no spreadsheet takes for a formula', async () => {
    const cwd = makeFolder({ ...FILES, '=sum.png': makeArt() });
    await runMain(['check', '=sum.png', ...WORDS, '--csv', 'run.csv'], { cwd });
    const rows = readText(cwd, 'run.csv').split('\r\n');
    expect(rows[0]).toBe(
      'artwork,verdict,widthMm,heightMm,ppi,worst,errors,warnings,advice,blank,output,error,sha256',
    );
    expect(rows).toHaveLength(7);
    expect(rows[1]).toMatch(/^"beds\/torn\.png",unreadable,,,,damaged,0,0,0,60x60mm,,/);
    expect(rows.find((row) => row.includes('sum.png'))).toMatch(/^"'=sum\.png",ready,2,2,304,/);
  });

  it('replaces the table of an earlier run, and no other file', async () => {
    const cwd = makeFolder({ ...FILES, 'notes.csv': 'mine' });
    const words = ['check', 'beds/basil.png', ...WORDS.slice(1), '--csv'];
    expect((await runMain([...words, 'run.csv'], { cwd })).code).toBe(0);
    expect((await runMain([...words, 'run.csv'], { cwd })).code).toBe(0);
    const refused = await runMain([...words, 'notes.csv'], { cwd });
    expect([refused.code, refused.stderr.includes('[file-exists]')]).toEqual([1, true]);
    expect(readText(cwd, 'notes.csv')).toBe('mine');
    const art = readFileSync(join(cwd, 'beds/basil.png'));
    const guarded = await runMain([...words, 'beds/basil.png', '--force'], { cwd });
    expect([guarded.code, guarded.stderr.includes('[cannot-write]')]).toEqual([1, true]);
    expect(readFileSync(join(cwd, 'beds/basil.png'))).toEqual(art);
  });
});
