import {
  BlankcheckError,
  type InspectedFile,
  inspectPrintReady,
  renderInspection,
  toInspectionJson,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError, printFault } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { describeTerminal } from '../terminal.ts';
import { walkArtworks } from './walk-artworks.ts';

/**
 * `inspect`: what print-ready files are, and whether they were changed since. Exit code 1 where one was, is none, or
 * cannot be read. @throws BlankcheckError of kind `usage`, before anything was read.
 */
export async function inspectFiles(words: readonly string[], options: TypedOptions, io: Io): Promise<number> {
  const { cwd, interrupt: signal, stdout, stderr, env } = io;
  if (words.length === 0)
    throw new BlankcheckError(
      'missing-artwork',
      'No file was given.\nName print-ready files or folders of them, or - for standard input.',
    );
  const limits = parseLimits(options.limit ?? []);
  const plan = await planInputs(words, { cwd, recursive: options.recursive === true, signal });
  const reader = createArtworkReader(io.stdin, signal, limits.maxBytes);
  const files: InspectedFile[] = [];
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => printFault(stderr, error, path),
    visit: async (planned) => {
      try {
        const inspection = await inspectPrintReady(await reader.read(planned), { limits, signal });
        files.push({ path: planned.path, inspection, error: null });
      } catch (error) {
        if (!(error instanceof BlankcheckError) || error.kind !== 'artwork') throw error;
        const { code, message } = error;
        files.push({ path: planned.path, inspection: null, error: { code, message } });
      }
      return true;
    },
  });
  for (const error of walked.usageErrors) printError(stderr, error);
  if (signal.aborted) stderr.write('blankcheck: interrupted\n');
  const exitCode = exitCodeOf({
    results: [],
    failOn: 'error',
    usageErrors: walked.usageErrors.length,
    faults: walked.faults,
    interruptedBy: interruptionOf(signal),
  });
  const terminal = describeTerminal(stdout, env, options);
  if (exitCode !== 2)
    stdout.write(
      options.json
        ? toInspectionJson(files)
        : files.map((file) => renderInspection(file, terminal)).join('\n'),
    );
  return exitCode === 0 && !files.every(isUnchanged) ? 1 : exitCode;
}

function isUnchanged({ inspection }: InspectedFile): boolean {
  return inspection !== null && inspection.record !== null && inspection.changes.length === 0;
}
