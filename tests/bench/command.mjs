import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const cli = (name) => fileURLToPath(new URL(`../../cli/${name}`, import.meta.url));

/**
 * The command line as a function of its words, to be run in this process beside its peers: it reads the file, judges,
 * writes and reports as the command does, without the start of a process.
 */
export async function loadCommand() {
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-command-'));
  // Below the project, so that its packages are found.
  const outdir = fileURLToPath(new URL('../../node_modules/.cache/blankcheck-bench', import.meta.url));
  await build({
    entryPoints: [cli('main.ts'), cli('output/temp-files.ts')],
    bundle: true,
    splitting: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    outdir,
    outbase: cli('.'),
    outExtension: { '.js': '.mjs' },
  });
  const { main } = await import(pathToFileURL(join(outdir, 'main.mjs')).href);
  const { createTempFiles } = await import(pathToFileURL(join(outdir, 'output', 'temp-files.mjs')).href);
  const silent = { write: () => undefined, isTTY: false };
  const io = {
    stdin: { isTTY: true, stop: () => undefined, async *[Symbol.asyncIterator]() {} },
    stdout: silent,
    stderr: silent,
    env: {},
    cwd: folder,
    interrupt: new AbortController().signal,
  };
  return async (words) => {
    const exitCode = await main(words, io, createTempFiles());
    if (exitCode !== 0) throw new Error(`blankcheck ${words.join(' ')} ended with ${exitCode}`);
  };
}
