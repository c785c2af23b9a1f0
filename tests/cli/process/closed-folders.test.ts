import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, type TestContext, vi } from 'vitest';
import { makeArt } from '../art.ts';
import { makeFolder } from '../temp-folder.ts';
import { buildCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 120_000 });
beforeAll(() => void buildCommand(), 60_000);

/** Who may read least; for root no folder is closed. */
const NOBODY = 65_534;
const SIZE = ['--blank', '60x60mm', '--width', '2mm'];
const BEDS = { 'beds/open/basil.png': makeArt(), 'beds/shut/mint.png': makeArt(), 'tile.json': '{}' };

/** The program as somebody who may not look into `beds/shut`. */
function runShutOut(args: readonly string[], context: TestContext) {
  const cwd = makeFolder(BEDS);
  const who = process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};
  const start = (words: readonly string[]) =>
    spawnSync(process.execPath, [buildCommand(), ...words], { cwd, encoding: 'utf8', ...who });
  chmodSync(cwd, 0o755);
  const shut = join(cwd, 'beds', 'shut');
  chmodSync(shut, 0);
  try {
    if (process.platform === 'win32' || start(['--version']).status !== 0)
      return context.skip('nobody may run the program here, or no folder can be shut');
    return start(args);
  } finally {
    chmodSync(shut, 0o755);
  }
}

describe('a folder that may not be read', () => {
  it.for([['beds/shut'], ['beds', '--recursive'], ['beds/*/*.png'], ['beds/**/mint.png'], ['beds/**']])(
    'is told of as what cannot be read, named by %j',
    (words, context) => {
      const { status, stdout } = runShutOut(['check', ...words, ...SIZE, '--json'], context);
      const { results } = JSON.parse(stdout) as {
        results: { artwork: { path: string }; error: { code: string } | null }[];
      };
      expect(status).toBe(1);
      const failed = results.filter(({ error }) => error !== null);
      expect(failed.map(({ artwork, error }) => [artwork.path, error?.code])).toEqual([
        ['beds/shut', 'cannot-read'],
      ]);
    },
  );

  it.for([
    ['check', 'beds/open/basil.png', '--blank', 'beds/shut/tile.json'],
    ['check', 'beds/open/basil.png', ...SIZE, '--printer', 'beds/shut/printer.json'],
    ['sheet', '--job', 'beds/shut/tags.job.json'],
  ])('holds nothing that an option can name: %j', (words, context) => {
    const { status, stderr } = runShutOut(words, context);
    expect([status, /\[([a-z-]+)\]/.exec(stderr)?.[1]]).toEqual([2, 'no-such-file']);
    expect(stderr).toContain('EACCES');
  });
});
