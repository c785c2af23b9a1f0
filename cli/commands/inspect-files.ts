import {
  BlankcheckError,
  type InspectedFile,
  inspectPrintReady,
  readPrintRecord,
  renderInspection,
  toInspectionsJson,
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
 * `inspect`: what each print-ready file is and whether it was changed; the answer is the data here, so it goes to standard
 * output. In folders and archives only files with a record count. Returns 0 when all are unchanged, 1 when one is not.
 * @throws BlankcheckError of kind `usage`, before anything was read.
 */
export async function inspectFiles(words: readonly string[], options: TypedOptions, io: Io): Promise<number> {
  const { cwd, interrupt: signal, stdout, stderr, env } = io;
  if (words.length === 0)
    throw new BlankcheckError(
      'missing-artwork',
      'No print-ready file was given.\nName files, folders or ZIP archives, or - for standard input.',
    );
  const limits = parseLimits(options.limit ?? []);
  const plan = await planInputs(words, { cwd, recursive: options.recursive === true, signal });
  const reader = createArtworkReader(io.stdin, signal, limits.maxBytes);
  const results: InspectedFile[] = [];
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => printFault(stderr, error, path),
    visit: async (planned, named) => {
      const { path } = planned;
      try {
        const bytes = await reader.read(planned);
        if (!named && !readPrintRecord(bytes)) return false;
        results.push({ path, ...(await inspectPrintReady(bytes, { limits, signal })) });
      } catch (error) {
        if (!(error instanceof BlankcheckError) || error.kind !== 'artwork') throw error;
        results.push(withoutBytes(path, error));
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
  if (exitCode !== 2)
    stdout.write(
      options.json
        ? toInspectionsJson(results)
        : results.map((file) => renderInspection(file, describeTerminal(stdout, env, options))).join('\n'),
    );
  return exitCode === 0 && results.some(({ verdict }) => verdict !== 'unchanged') ? 1 : exitCode;
}

function withoutBytes(path: string, { code, message }: BlankcheckError): InspectedFile {
  const nothing = {
    sha256: null,
    format: null,
    widthPx: null,
    heightPx: null,
    statedPpi: null,
    trueSizeMm: null,
  };
  return { path, verdict: 'unreadable', ...nothing, record: null, changes: [], error: { code, message } };
}
