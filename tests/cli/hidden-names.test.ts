import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findSteering } from '../reports/steering.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, readText } from './temp-folder.ts';

/** Clears a screen by C0 and by C1, begins a line of its own, and reverses what follows: ECMA-48, UAX #9. */
const NASTY = 'bed\u001b[2J\u009b2J\nready\u202egnp';
const SHOWN = 'bed\\u001b[2J\\u009b2J\\nready\\u202egnp';
const SIZE = ['--blank', '60x60mm', '--width', '2mm'];
const RECORD = {
  id: 'own-tile',
  name: NASTY,
  family: 'ceramic-tile',
  outline: { shape: 'rectangle', widthMm: 60, heightMm: 60, cornerRadiusMm: 0 },
  bleedMm: 3,
  safeMm: 3,
  surface: 'first',
  note: NASTY,
  sources: [{ mark: 'b', text: NASTY, covers: NASTY }],
};

/** Everything that the run printed: a line end is all of it that a terminal obeys. */
async function printed(argv: readonly string[], cwd: string): Promise<string> {
  const { stdout, stderr } = await runMain(argv, { cwd });
  const text = `${stdout}${stderr}`;
  expect(findSteering(text)).toEqual([]);
  expect(text.split('\n').some((line) => line.startsWith('ready'))).toBe(false);
  return text;
}

const makeBeds = () =>
  makeFolder({
    [`${NASTY}/${NASTY}.png`]: makeArt(),
    [`${NASTY}/${NASTY}-torn.png`]: makeArt().subarray(0, 60),
    [`${NASTY}.json`]: JSON.stringify(RECORD),
  });

describe('a name that would steer a terminal', () => {
  it.each([
    ['prepare', [NASTY, ...SIZE]],
    ['prepare', [NASTY, ...SIZE, '--quiet', '--out', NASTY.slice(0, 9)]],
    ['check', [NASTY, ...SIZE, '--dry-run']],
    ['check', [`${NASTY}/*.png`, ...SIZE]],
    ['check', [NASTY, ...SIZE, '--json']],
    ['check', [NASTY, ...SIZE, '--json-lines']],
    ['check', [NASTY, '--blank', `${NASTY}.json`]],
    ['sheet', [NASTY, ...SIZE, '--sheet', 'a4', '--anyway']],
    ['suits', [NASTY]],
    ['inspect', [NASTY]],
    ['press', [`${NASTY}.json`]],
    ['shortcut', ['--to', NASTY, ...SIZE.slice(0, 2), '--for', 'linux']],
  ])('is visible in what %s prints (case %#)', async (command, words) => {
    const text = await printed([command, ...words], makeBeds());
    expect(text).toContain('bed\\u001b[2J\\u009b2J');
  });

  it('is visible where nothing has it', async () => {
    const cwd = makeFolder();
    for (const argv of [
      ['blanks', NASTY],
      ['check', NASTY, ...SIZE],
      ['press', NASTY],
      ['inspect', NASTY],
    ])
      expect(await printed(argv, cwd)).toContain('bed\\u001b[2J\\u009b2J');
  });

  it('is visible in the settings', async () => {
    const cwd = makeFolder({ 'blankcheck.config.json': JSON.stringify({ out: NASTY }) });
    expect(await printed(['config'], cwd)).toContain(SHOWN);
    const json = await printed(['config', '--json'], cwd);
    expect(JSON.parse(json).out.value).toBe(NASTY);
  });

  it('is one visible line of standard output, and as it is in --json', async () => {
    const cwd = makeBeds();
    const { stdout } = await runMain([NASTY, ...SIZE], { cwd });
    expect(stdout.split('\n')).toEqual([expect.stringContaining(`${SHOWN}/print-ready/`), '']);
    const json = JSON.parse((await runMain([NASTY, ...SIZE, '--force', '--json'], { cwd })).stdout);
    expect(listFiles(cwd)).toContain(json.results[1].output.path);
  });

  it('is visible in the tables for spreadsheets, and one row', async () => {
    const cwd = makeBeds();
    await runMain(['check', NASTY, ...SIZE, '--csv', 'run.csv'], { cwd });
    const rows = readText(cwd, 'run.csv').split('\r\n');
    expect(rows).toHaveLength(4);
    expect(findSteering(rows.join(''))).toEqual([]);
    expect(rows[2]).toContain(join(SHOWN, SHOWN));
    const recording = ['record', '--blank', '60x60mm', '--art', `${NASTY}/${NASTY}.png`, '--result', '4'];
    await printed([...recording, '--note', `first\n=second\u001b[2J`], cwd);
    await printed([...recording, '--note', NASTY, '--json'], cwd);
    await printed(['history'], cwd);
    await printed(['history', '--json'], cwd);
    const table = (await runMain(['history', '--csv'], { cwd })).stdout;
    expect(findSteering(table.replaceAll('\r\n', ''))).toEqual([]);
    expect(table).toContain(join(SHOWN, SHOWN));
    expect(table).toContain('"first\n=second\\u001b[2J"');
  });
});
