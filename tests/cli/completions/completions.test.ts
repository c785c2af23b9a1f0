import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, type TestContext } from 'vitest';
import { readCommandTree } from '../../../cli/completions/command-tree.ts';
import { SHELLS, type Shell } from '../../../cli/completions/shells.ts';
import { listBlanks } from '../../../src/index.ts';
import { requireWitness } from '../../witness.ts';
import { runMain } from '../run-main.ts';
import { makeFolder } from '../temp-folder.ts';

const tree = readCommandTree();
const askBash = fileURLToPath(new URL('complete.bash', import.meta.url));
const typeInZsh = fileURLToPath(new URL('complete.zsh', import.meta.url));
const script = async (shell: Shell) => (await runMain(['completions', shell], { cwd: '.' })).stdout;

function run(
  context: TestContext,
  cwd: string,
  program: 'bash' | 'zsh' | 'fish',
  args: readonly string[],
): string[] {
  requireWitness(context, program);
  const env = { PATH: process.env.PATH, HOME: cwd, TERM: 'dumb', LANG: 'C.UTF-8' };
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd,
    env,
    encoding: 'utf8',
    timeout: 60_000,
  });
  expect([status, stderr]).toEqual([0, '']);
  return stdout.split('\n').filter((line) => line !== '');
}

const FILES = { 'pear & \'mint\' "50 %" ^ö.png': '', 'seeds/': '', 'sepal.png': '' };

/** What a shell offers for the last word of a line. */
async function offered(context: TestContext, shell: 'bash' | 'fish', line: string): Promise<string[]> {
  const cwd = makeFolder({ ...FILES, script: await script(shell) });
  if (shell === 'fish')
    return run(context, cwd, shell, ['--no-config', '-c', 'source script; complete -C $argv[1]', line]).map(
      (found) => found.split('\t')[0]!,
    );
  return run(context, cwd, shell, ['--norc', askBash, './script', ...line.split(' ')]);
}

const IDS = listBlanks().map(({ id }) => id);

describe.each(['bash', 'fish'] as const)('%s, as the shell itself completes', (shell) => {
  it.for<[string, string[]]>([
    ['blankcheck rec', ['record']],
    ['blankcheck press tile-ceramic-6', ['tile-ceramic-6in', 'tile-ceramic-6x8in']],
    ['blankcheck record --defect sp', ['specks']],
    ['blankcheck record --pressure li', ['light', 'light-medium']],
    ['blankcheck --blank mug-11oz --fi', ['--fit']],
    ['blankcheck check art.png --fit ', ['cover', 'inside']],
    ['blankcheck completions ', [...SHELLS].sort()],
    ['blankcheck history --pi', []],
    ['blankcheck prepare --width ', []],
  ])('%j', async ([line, words], context) => {
    expect((await offered(context, shell, line)).sort()).toEqual(words);
  });

  it('offers every option of every command that its help offers, and no other', async (context) => {
    for (const { name, options } of tree)
      expect((await offered(context, shell, `blankcheck ${name} --`)).sort(), name).toEqual(
        options.map((option) => option.name).sort(),
      );
  });

  it('offers every blank of the catalogue behind --blank', async (context) => {
    expect(await offered(context, shell, 'blankcheck check --blank ')).toEqual(expect.arrayContaining(IDS));
  });
});

describe('fish', () => {
  it('offers files of any name', async (context) => {
    expect(await offered(context, 'fish', 'blankcheck check pe')).toEqual(['pear & \'mint\' "50 %" ^ö.png']);
  });
});

describe('zsh, typed into on a terminal of its own', () => {
  const typed = async (context: TestContext, line: string) => {
    const cwd = makeFolder({ ...FILES, script: await script('zsh') });
    return run(context, cwd, 'zsh', ['-f', typeInZsh, `${cwd}/script`, line])[0];
  };

  it.for<[string, string]>([
    ['blankcheck rec\t', 'record'],
    ['blankcheck press tile-ceramic-6x\t', 'press tile-ceramic-6x8in'],
    ['blankcheck record --defe\tfad\t', 'record --defect faded'],
    ['blankcheck --blank mug-11\t --fi\tco\t', '--blank mug-11oz --fit cover'],
    ['blankcheck check pe\t', 'check pear & \'mint\' "50 %" ^ö.png'],
    ['blankcheck --out se\t', '--out seeds'],
  ])('%j becomes %j', async ([line, words], context) => {
    expect(await typed(context, line)).toBe(words);
  });
});

describe('powershell, read as text and not run', () => {
  it('holds every command and option, its quotes and brackets are paired, and it says that it was not run', async () => {
    const text = await script('powershell');
    for (const { name, options } of tree)
      for (const word of [name, ...options.map((option) => option.name)]) expect(text).toContain(`'${word}'`);
    const bare = text.replace(/^#.*$/gm, '').replace(/'[^']*'/g, '');
    expect(bare).not.toContain("'");
    for (const [open, close] of ['{}', '()', '[]'])
      expect(bare.split(open!).length).toBe(bare.split(close!).length);
    expect(text).toContain('not run');
  });
});

describe('blankcheck completions', () => {
  it.each([[[]], [['tcsh']], [['bash', 'zsh']]])('%j is refused', async (words) => {
    const run = await runMain(['completions', ...words], { cwd: '.' });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain('[bad-option]');
  });
});
