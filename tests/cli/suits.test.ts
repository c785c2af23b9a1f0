import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../seeds/schema/suits.schema.json', import.meta.url), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(schema);
const FILES = {
  'pear.png': makeArt([40, 120, 60], 2000),
  'torn.png': makeArt().slice(0, 40),
  'note.txt': 'hello',
};

const suits = async (...args: string[]) => {
  const cwd = makeFolder(FILES);
  const run = await runMain(['suits', ...args], { cwd });
  expect(listFiles(cwd)).toEqual(Object.keys(FILES).sort());
  return run;
};

describe('blankcheck suits', () => {
  it('tells programs what its schema says', async () => {
    const { code, stdout } = await suits('pear.png', '--json');
    expect(code).toBe(0);
    const document = JSON.parse(stdout);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(document.results[0].blanks.length).toBeGreaterThan(40);
  });

  it('filters by words, resolution and full bleed', async () => {
    const ids = async (...args: string[]) =>
      JSON.parse((await suits('pear.png', '--json', ...args)).stdout).results[0].blanks.map(
        ({ id }: { id: string }) => id,
      );
    expect(await ids('--among', 'tile 8in square')).toEqual(['tile-ceramic-8in']);
    expect(await ids('--among', 'tile 8in square', '--at-least', 'good')).toEqual([]);
    expect(await ids('--among', 'tile 8in square', '--at-least', 'acceptable', '--full-bleed')).toHaveLength(
      1,
    );
  });

  it('goes on past an artwork that cannot be read, and says so', async () => {
    const { code, stdout } = await suits('.', '--json');
    expect(code).toBe(1);
    const [pear, torn] = JSON.parse(stdout).results;
    expect(pear.error).toBeNull();
    expect(torn).toMatchObject({ artwork: { path: 'torn.png' }, blanks: [], error: { code: 'damaged' } });
  });

  it.each([
    [['suits'], 'missing-artwork'],
    [['suits', 'nothing.png'], 'no-such-file'],
    [['suits', 'pear.png', '--among', 'zeppelin'], 'unknown-blank'],
    [['suits', 'pear.png', '--at-least', 'superb'], 'bad-option'],
    [['suits', 'pear.png', '--blank', 'tile-ceramic-8in'], 'bad-option'],
  ])('%j is %s', async (args, code) => {
    const run = await runMain(args, { cwd: makeFolder(FILES) });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
  });
});
