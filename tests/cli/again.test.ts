import { appendFileSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { RUN_RECORD_NAME } from '../../cli/output/run-record-name.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, putFiles } from './temp-folder.ts';

const FILES = {
  'beds/basil.png': makeArt(),
  'beds/mint.png': makeArt([20, 90, 70]),
  'beds/torn.png': makeArt().subarray(0, 60),
};
const WORDS = ['beds', '--blank', '60x60mm', '--width', '2mm', '--out', 'out', '--json'];
const MINT = 'out/mint.60x60mm.png';

const times = (cwd: string) =>
  ['basil', 'mint'].map((name) => statSync(join(cwd, `out/${name}.60x60mm.png`), { bigint: true }).mtimeNs);
const told = (stderr: string) => Number(/(\d+) artworks? (?:is|are) unchanged/.exec(stderr)?.[1] ?? 0);

async function runTwice(between: (cwd: string) => void, more: readonly string[] = []) {
  const cwd = makeFolder(FILES);
  const first = await runMain(WORDS, { cwd });
  const before = times(cwd);
  between(cwd);
  const second = await runMain([...WORDS, ...more], { cwd });
  const after = times(cwd);
  const again = ['basil', 'mint'].filter((_, index) => before[index] !== after[index]);
  return { cwd, first, second, again };
}

describe('a second run over a folder', () => {
  it('does nothing where nothing changed, and reports the same', async () => {
    const { first, second, again } = await runTwice(() => undefined);
    expect(again).toEqual([]);
    expect(told(second.stderr)).toBe(2);
    expect([second.code, second.stdout]).toEqual([first.code, first.stdout]);
  });

  it('does an artwork that changed, and replaces the file that was made of it', async () => {
    const { second, again, cwd } = await runTwice((folder) =>
      putFiles(folder, { 'beds/mint.png': makeArt([9, 9, 90]) }),
    );
    expect(again).toEqual(['mint']);
    expect(told(second.stderr)).toBe(1);
    const whole = makeFolder({ 'beds/mint.png': makeArt([9, 9, 90]) });
    await runMain(WORDS, { cwd: whole });
    expect(readFileSync(join(cwd, MINT))).toEqual(readFileSync(join(whole, MINT)));
  });

  it('does all with --fresh, and with other options', async () => {
    expect((await runTwice(() => undefined, ['--fresh'])).again).toEqual(['basil', 'mint']);
    expect((await runTwice(() => undefined, ['--ppi', '310'])).again).toEqual(['basil', 'mint']);
    expect((await runTwice(() => undefined, ['--quiet', '--recursive'])).again).toEqual([]);
  });

  it('makes a file that is gone, or was finished and not noted before a kill', async () => {
    const gone = await runTwice((cwd) => rmSync(join(cwd, MINT)));
    expect(gone.again).toEqual(['mint']);
    const killed = await runTwice((cwd) => rmSync(join(cwd, 'out', RUN_RECORD_NAME)));
    expect([killed.second.code, killed.again]).toEqual([1, ['basil', 'mint']]);
    expect(killed.second.stdout).toBe(killed.first.stdout);
  });

  it('does all for another version of the program, and replaces what an earlier one made of the same art', async () => {
    const { second, again } = await runTwice((cwd) => {
      const record = join(cwd, 'out', RUN_RECORD_NAME);
      writeFileSync(
        record,
        readFileSync(record, 'utf8').replaceAll(/"program":"[^"]*"/g, '"program":"0.0.1"'),
      );
      putFiles(cwd, { 'beds/mint.png': makeArt([9, 9, 90]) });
    });
    expect([again, second.code]).toEqual([['basil', 'mint'], 1]);
    expect(told(second.stderr)).toBe(0);
  });

  it('leaves a file that somebody else put there', async () => {
    const { second, cwd } = await runTwice((folder) => writeFileSync(join(folder, MINT), 'mine'));
    expect(JSON.parse(second.stdout).results[1].error.code).toBe('file-exists');
    expect(readFileSync(join(cwd, MINT), 'utf8')).toBe('mine');
  });

  it.each(['{"file":', '\u0000', '[]', 'null', '{}', '{"schemaVersion":1}'])(
    'goes on behind a line that is none: %j',
    async (line) => {
      const { second } = await runTwice((cwd) => appendFileSync(join(cwd, 'out', RUN_RECORD_NAME), line));
      expect(told(second.stderr)).toBe(2);
    },
  );

  it('reads anew what a blank record says', async () => {
    const blank = (bleedMm: number) =>
      JSON.stringify({
        id: 'shed-tile',
        name: 'Tile',
        outline: { shape: 'rect', widthMm: 60, heightMm: 60 },
        bleedMm,
        safeMm: 2,
        surface: 'first',
      });
    const cwd = makeFolder({ ...FILES, 'tile.json': blank(2) });
    const words = ['beds', '--blank', 'tile.json', '--width', '2mm', '--out', 'out'];
    const first = await runMain(words, { cwd });
    if (first.code === 2) throw new Error(first.stderr);
    expect(told((await runMain(words, { cwd })).stderr)).toBe(2);
    putFiles(cwd, { 'tile.json': blank(3) });
    expect(told((await runMain(words, { cwd })).stderr)).toBe(0);
  });

  it('keeps no record of a check, nor of a dry run', async () => {
    const cwd = makeFolder(FILES);
    await runMain(['check', ...WORDS], { cwd });
    await runMain([...WORDS, '--dry-run'], { cwd });
    expect(listFiles(cwd)).toEqual(Object.keys(FILES).sort());
  });
});

describe('the record', () => {
  const lines = (cwd: string) =>
    readFileSync(join(cwd, 'out', RUN_RECORD_NAME), 'utf8')
      .split('\n')
      .filter((line) => line !== '');

  it('keeps one line for each artwork when more than half of it is superseded, and serves as before', async () => {
    const cwd = makeFolder(FILES);
    await runMain(WORDS, { cwd });
    await runMain([...WORDS, '--fresh', '--force'], { cwd });
    // Two of four are not more than half.
    expect(lines(cwd)).toHaveLength(4);
    const third = await runMain([...WORDS, '--fresh', '--force'], { cwd });
    expect(lines(cwd).map((line) => JSON.parse(line).file)).toEqual([
      'basil.60x60mm.png',
      'mint.60x60mm.png',
    ]);
    const fourth = await runMain(WORDS, { cwd });
    expect(told(fourth.stderr)).toBe(2);
    expect(fourth.stdout).toBe(third.stdout);
    expect(listFiles(join(cwd, 'out')).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });
});
