import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { findBlank } from '../../../src/index.ts';
import { makeArt } from '../art.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';
import { buildCommand, runCommand, startCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 60_000 });
beforeAll(() => void buildCommand(), 60_000);

const ART = makeArt();
const SHARP = ['--blank', '40x40mm', '--width', '2mm'];

describe('streams of the process', () => {
  it('standard input and output are what they are for', async () => {
    const cwd = makeFolder();
    const { child, finished } = startCommand(['-', ...SHARP], { cwd });
    child.stdin.write(ART.subarray(0, 50));
    child.stdin.end(ART.subarray(50));
    const { code, stdout, stderr } = await finished;
    expect([code, stdout]).toEqual([0, 'print-ready/stdin.40x40mm.png\n']);
    expect(stderr).toMatch(/^READY TO PRINT: -/);
    expect(listFiles(cwd)).toEqual(['print-ready/stdin.40x40mm.png']);
  });

  it('a pipe without a writer is told of, whatever it is given for', async () => {
    const cwd = makeFolder({ 'a.png': ART });
    for (const name of ['f.png', 'f.json', 'f.icc']) execFileSync('mkfifo', [join(cwd, name)]);
    const codeOf = async (...args: string[]) => {
      const { code, stderr } = await runCommand(['check', ...args], { cwd });
      return [code, /[([]([a-z-]+)[)\]]$/m.exec(stderr)?.[1]];
    };
    expect(await codeOf('f.png', ...SHARP)).toEqual([1, 'cannot-read']);
    expect(await codeOf('a.png', '--blank', './f.json')).toEqual([2, 'no-such-file']);
    expect(await codeOf('a.png', ...SHARP, '--condition', 'f.icc')).toEqual([2, 'bad-condition']);
    expect(await codeOf('a.png', ...SHARP, '--printer', 'f.json')).toEqual([2, 'no-such-file']);
  });

  it('what a shell gives in place of a file is read', (context) => {
    if (process.platform !== 'linux') context.skip('/dev/stdin is a pipe of its own on Linux');
    const cwd = makeFolder({ 'a.png': ART });
    const blank = JSON.stringify({ ...findBlank('tile-ceramic-8in'), id: 'own' });
    const tried = (script: string) =>
      spawnSync('bash', ['-c', script, process.execPath, buildCommand(), blank], { cwd }).status;
    expect(tried('cat a.png | "$0" "$1" check /dev/stdin --blank 40x40mm --width 2mm')).toBe(0);
    expect(tried('"$0" "$1" check <(cat a.png) --blank 40x40mm --width 2mm')).toBe(0);
    expect(tried('"$0" "$1" check a.png --blank <(printf %s "$2") --width 2mm')).toBe(0);
  });

  it('what a shell gives in place of a record serves a whole folder, and what it says counts in the next run', (context) => {
    if (process.platform !== 'linux') context.skip('a shell hands over open files as /dev/fd on Linux');
    const cwd = makeFolder({ 'beds/a.png': ART, 'beds/b.png': makeArt([9, 9, 90]) });
    const run = (given: string, safeMm: number) => {
      const blank = JSON.stringify({ ...findBlank('tile-ceramic-8in'), id: 'own', safeMm });
      const script = `"$0" "$1" beds --width 2mm --jobs 2 --out out ${given}`;
      const { status, stderr } = spawnSync('bash', ['-c', script, process.execPath, buildCommand(), blank], {
        cwd,
        encoding: 'utf8',
      });
      return [status, Number(/(\d+) artworks are unchanged/.exec(stderr)?.[1] ?? 0)];
    };
    for (const given of ['--blank <(printf %s "$2")', '--blank /dev/stdin <<< "$2"']) {
      expect(run(given, 5)).toEqual([0, 0]);
      expect(run(given, 5)).toEqual([0, 2]);
      expect(run(given, 6)).toEqual([0, 0]);
    }
  });

  it('an exit code of 2 leaves standard output empty', async () => {
    const { code, stdout, stderr } = await runCommand(['none.png', ...SHARP, '--json'], {
      cwd: makeFolder(),
    });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain('[no-such-file]');
  });

  it('a document of three megabytes goes through a pipe whole', async () => {
    // Empty artworks are judged quickly, and their long paths make the document long.
    const folder = Array.from({ length: 16 }, (_, depth) => (depth % 10).toString().repeat(200)).join('/');
    const files = Array.from({ length: 950 }, (_, index) => [`${folder}/${index}.png`, ''] as const);
    const cwd = makeFolder(Object.fromEntries(files));
    const { code, stdout } = await runCommand(['check', folder, ...SHARP, '--json', '--quiet'], { cwd });
    expect(code).toBe(1);
    expect(stdout.length).toBeGreaterThan(3 * 2 ** 20);
    expect(JSON.parse(stdout).results).toHaveLength(950);
  });

  it('a reader that goes away ends the telling, not the work', async () => {
    const cwd = makeFolder({ 'a.png': ART, 'b.png': ART });
    const { child, finished } = startCommand(['a.png', 'b.png', ...SHARP], { cwd });
    child.stdout.destroy();
    child.stderr.destroy();
    const { code } = await finished;
    expect(code).toBe(0);
    expect(listFiles(join(cwd, 'print-ready'))).toEqual(['a.40x40mm.png', 'b.40x40mm.png']);
  });

  it('the same with a real pipe: no stack trace, and nothing at all on standard error', () => {
    const shell = spawnSync('sh', [
      '-c',
      '"$0" "$1" blanks --json | head -c 100',
      process.execPath,
      buildCommand(),
    ]);
    expect(shell.stdout.length).toBe(100);
    expect(shell.stderr.toString()).toBe('');
  });

  it('data that standard output cannot take is an error', async (context) => {
    if (process.platform !== 'linux') context.skip('/dev/full is a file of Linux');
    const shell = spawn('sh', ['-c', '"$0" "$1" blanks > /dev/full', process.execPath, buildCommand()]);
    let stderr = '';
    shell.stderr.on('data', (text) => {
      stderr += text;
    });
    const code = await new Promise((resolve) => shell.on('close', resolve));
    expect(code).toBe(1);
    expect(stderr).toContain('[cannot-write]');
  });

  it('a disk that is full, as far as the process may write: it says so first, and no part of a file stays', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const script = 'ulimit -f 1; exec "$0" "$@"';
    const args = [buildCommand(), 'pear.png', '--blank', '400x400mm', '--width', '2mm'];
    const shell = spawnSync('sh', ['-c', script, process.execPath, ...args], { cwd });
    expect(shell.stderr.toString()).toMatch(/^NOT WRITTEN: pear/);
    expect(shell.stderr.toString()).toContain('cannot-write');
    expect(shell.stdout.toString()).toBe('');
    expect(shell.status).toBe(1);
    expect(listFiles(cwd)).toEqual(['pear.png']);
  });
});

describe('a fault outside of any artwork', () => {
  it('is told as one, without a stack trace, and makes the exit code 3', async () => {
    // As soon as the program listens for it.
    const fault = `const timer = setInterval(() => {
      if (process.listenerCount('uncaughtException') === 0) return;
      clearInterval(timer);
      undefined.pear;
    }, 1);`;
    const cwd = makeFolder({ 'fault.mjs': fault, 'pear.png': ART });
    const { code, stderr } = await runCommand(['pear.png', ...SHARP], {
      cwd,
      node: ['--import', './fault.mjs'],
    });
    expect(code).toBe(3);
    expect(stderr).toMatch(/^blankcheck: .*TypeError.* \[fault\]$/m);
    expect(stderr).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
  });
});

describe('what is asked quickly is answered quickly', () => {
  it.each([
    [['--help'], 0],
    [['--version'], 0],
    [['blanks', 'tile'], 0],
    [['press', 'tile-ceramic-8in'], 0],
    [['--frobnicate'], 2],
    [['pear.png', '--blank', 'tile-ceramic-8inch'], 2],
  ])('%j loads neither the image library nor the schema library', async (args, expected) => {
    const cwd = makeFolder({
      'log.mjs': `import { appendFileSync } from 'node:fs';
        export async function resolve(name, context, next) {
          const found = await next(name, context);
          appendFileSync('loaded.txt', found.url + '\\n');
          return found;
        }`,
      'hook.mjs': `import { register } from 'node:module'; register('./log.mjs', import.meta.url);`,
    });
    const { code } = await runCommand(args, { cwd, node: ['--import', './hook.mjs'] });
    expect(code).toBe(expected);
    const loaded = readFileSync(join(cwd, 'loaded.txt'), 'utf8');
    expect(loaded).toContain('cli/main.js');
    expect(loaded).not.toMatch(/node_modules\/(?:sharp|zod|yauzl|color)\//);
  });
});
