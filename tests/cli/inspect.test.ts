import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/index.ts';
import { expectGolden } from '../golden.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../seeds/schema/inspections.schema.json', import.meta.url), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);
const ART = makeArt();

/** A folder with art, its print-ready file, a copy of that with the density changed, and one whose end is missing. */
async function makeShed(): Promise<string> {
  const cwd = makeFolder({ 'basil.png': ART, 'note.txt': 'sow in April' });
  const args = ['basil.png', '--blank', '30x40mm', '--width', '2mm', '--ppi', '72', '--out', 'ready'];
  expect((await runMain(args, { cwd })).code).toBe(0);
  return cwd;
}
const FILE = 'ready/basil.30x40mm.png';

describe('blankcheck inspect', () => {
  it('tells programs what its schema says, of several files', async () => {
    const cwd = await makeShed();
    const { code, stdout } = await runMain(['inspect', FILE, 'basil.png', 'note.txt', '--json'], { cwd });
    expect(code).toBe(1);
    const document = JSON.parse(stdout);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(document.results.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'unchanged',
      'not-print-ready',
      'unreadable',
    ]);
  });

  it('is 0 for an unchanged file, from a folder and from standard input too', async () => {
    const cwd = await makeShed();
    const stdin = readFileSync(`${cwd}/${FILE}`);
    for (const word of [FILE, 'ready', '-']) {
      const { code, stdout, stderr } = await runMain(['inspect', word, '--json'], { cwd, stdin });
      expect([code, stderr]).toEqual([0, '']);
      expect(JSON.parse(stdout).results).toHaveLength(1);
    }
  });

  it('reads a whole page, corrected for a printer, as it was written', async () => {
    const printer = {
      name: 'Shed',
      paper: 'a5',
      scaleCorrection: { scan: 1.002, feed: 0.996 },
    };
    const cwd = makeFolder({ 'basil.png': ART, 'shed.json': JSON.stringify(printer) });
    const page = ['--sheet', 'a5', '--format', 'png', '--printer', 'shed.json', '--out', 'ready'];
    const made = await runMain(
      ['basil.png', '--blank', '30x40mm', '--width', '2mm', '--ppi', '72', ...page],
      {
        cwd,
      },
    );
    expect(made.code, made.stderr).toBe(0);
    const { code, stdout } = await runMain(['inspect', made.stdout.trim(), '--json'], { cwd });
    expect([code, JSON.parse(stdout).results[0].changes]).toEqual([0, []]);
    expect(JSON.parse(stdout).results[0].record.densityPpi).toBeDefined();
  });

  it('tells people the same', async () => {
    const cwd = await makeShed();
    const { stdout } = await runMain(['inspect', FILE, 'basil.png', 'note.txt'], { cwd });
    expectGolden('inspect.txt', stdout.replace(VERSION, '<version>'));
  });

  it.each([
    [[], 'missing-artwork'],
    [['nothing.png'], 'no-such-file'],
    [['.'], 'no-artwork-in-folder'],
    [['basil.png', '--blank', '30x40mm'], 'bad-option'],
  ])('%j is %s', async (words, code) => {
    const run = await runMain(['inspect', ...words], { cwd: makeFolder({ 'basil.png': ART }) });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
  });
});
