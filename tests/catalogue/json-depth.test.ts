import { describe, expect, it } from 'vitest';
import { findTooDeep, MAX_JSON_DEPTH, parseCommentedJson, readLedger } from '../../src/index.ts';
import { runMain } from '../cli/run-main.ts';
import { makeFolder } from '../cli/temp-folder.ts';

const nested = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;
const members = (levels: number) => `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}`;
/** More than the readers have stack for. */
const DEEP = 150_000;

describe('the depth of JSON', () => {
  it.each([nested, members])('is found just above the limit, and where', (make) => {
    expect(findTooDeep(make(MAX_JSON_DEPTH))).toBeNull();
    const text = make(MAX_JSON_DEPTH + 1);
    expect(findTooDeep(text)).toBe(make === nested ? MAX_JSON_DEPTH : 5 * MAX_JSON_DEPTH);
  });

  it.each([
    `"${'['.repeat(200)}"`,
    `"\\"${'['.repeat(200)}\\\\"`,
    `// ${'['.repeat(200)}\n[]`,
    `/* ${'{\n'.repeat(200)} */ []`,
    '[],'.repeat(500),
  ])('counts no bracket of texts and comments, and none that is closed (%#)', (text) =>
    expect(findTooDeep(text)).toBeNull(),
  );

  it('counts behind them', () => expect(findTooDeep(`"[" /* [ */ ${nested(101)}`)).toBe(112));

  it('is a fault with its line', async () => {
    expect(await parseCommentedJson(`\n${nested(MAX_JSON_DEPTH)}`)).toHaveProperty('value');
    expect(await parseCommentedJson(`\n${nested(DEEP)}`)).toMatchObject({ fault: { line: 2 } });
    const { faults } = await readLedger(`${nested(DEEP)}\n${members(DEEP)}\n`);
    expect(faults.map(({ line }) => line)).toEqual([1, 2]);
  });
});

describe('JSON that is nested too deeply', () => {
  const deep = { 'list.json': nested(DEEP), 'object.json': members(DEEP) };
  const tile = ['--blank', 'tile-ceramic-8in'];

  it.each(
    ['list.json', 'object.json'].flatMap((file) => [
      [['check', 'a.png', ...tile, '--printer', file], 'bad-printer-record'],
      [['check', 'a.png', '--blank', file], 'bad-blank-record'],
      [['sheet', '--job', file], 'bad-job'],
    ]),
  )('%j: %s', async (args, code) => {
    const run = await runMain(args as string[], { cwd: makeFolder({ ...deep, 'a.png': '' }) });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
  });

  it('in the settings: bad-config', async () => {
    const cwd = makeFolder({ 'a.png': '', 'blankcheck.config.json': nested(DEEP) });
    const run = await runMain(['check', 'a.png', ...tile], { cwd });
    expect([run.code, run.stderr.includes('[bad-config]')]).toEqual([2, true]);
  });

  it.each([['history'], ['press', 'tile-ceramic-8in']])('in the ledger: a bad line (%s)', async (...args) => {
    const cwd = makeFolder({ 'blankcheck-ledger.jsonl': `${nested(DEEP)}\n` });
    const run = await runMain(args, { cwd });
    expect([run.code, run.stderr.includes('[bad-line]')]).toEqual([1, true]);
  });
});
