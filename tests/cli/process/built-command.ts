import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
/** Below node_modules, so that the built files find their packages. */
const CACHE = join(ROOT, 'node_modules', '.cache', 'blankcheck-tests');
const HOUR_MS = 3600 * 1000;

/** The program, built from the sources as they are now, whatever is in dist; built once per state of the sources. */
export function buildCommand(): string {
  const sources = ['src', 'cli'].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => ({ name: join(folder, name), text: readFileSync(join(ROOT, folder, name), 'utf8') })),
  );
  const state = createHash('sha256').update(JSON.stringify(sources)).digest('hex').slice(0, 16);
  const built = join(CACHE, state);
  if (!existsSync(built)) buildInto(built, sources);
  return join(built, 'cli', 'bin.js');
}

function buildInto(built: string, sources: readonly { name: string; text: string }[]): void {
  const fresh = `${built}.${process.pid}`;
  const compilerOptions: ts.CompilerOptions = {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.ESNext,
    verbatimModuleSyntax: true,
    rewriteRelativeImportExtensions: true,
  };
  for (const { name, text } of sources) {
    const path = join(fresh, name.replace(/\.ts$/, '.js'));
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, ts.transpileModule(text, { compilerOptions }).outputText);
  }
  writeFileSync(join(fresh, 'package.json'), '{ "type": "module" }');
  // The package has its docs beside it: pages of findings are shown in the report.
  symlinkSync(join(ROOT, 'docs'), join(fresh, 'docs'));
  for (const name of readdirSync(CACHE))
    if (Date.now() - statSync(join(CACHE, name)).mtimeMs > HOUR_MS)
      rmSync(join(CACHE, name), { recursive: true, force: true });
  try {
    renameSync(fresh, built);
  } catch (error) {
    // Another test file was as quick and built the same.
    if (!existsSync(built)) throw error;
    rmSync(fresh, { recursive: true });
  }
}

export interface Finished {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Started {
  readonly child: ChildProcessWithoutNullStreams;
  readonly finished: Promise<Finished>;
}

/** Starts the program as a process of its own, with plain pipes and no colour settings of ours. */
export function startCommand(
  args: readonly string[],
  {
    cwd,
    env = {},
    node = [],
  }: { readonly cwd: string; readonly env?: NodeJS.ProcessEnv; readonly node?: readonly string[] },
): Started {
  const { FORCE_COLOR: _force, NO_COLOR: _no, CI: _ci, NODE_OPTIONS: _options, ...inherited } = process.env;
  const child = spawn(process.execPath, [...node, buildCommand(), ...args], {
    cwd,
    env: { ...inherited, ...env },
  });
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  child.stdin.on('error', () => undefined);
  const finished = new Promise<Finished>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => resolve({ code, signal, stdout, stderr }));
  });
  return { child, finished };
}

/** Starts it, gives it no input, and waits for its end. */
export function runCommand(...start: Parameters<typeof startCommand>): Promise<Finished> {
  const { child, finished } = startCommand(...start);
  child.stdin.end();
  return finished;
}
