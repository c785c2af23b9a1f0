import { listBlanks, renderBlankList, searchBlanks, showHidden } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';

/** `blanks`: the catalogue, or what of it fits the words. That nothing fits is an answer, not an error. */
export function printBlanks(
  words: readonly string[],
  options: TypedOptions,
  { stdout, stderr, env }: Io,
): number {
  const blanks = words.length === 0 ? listBlanks() : searchBlanks(words);
  if (options.json) stdout.write(`${JSON.stringify({ schemaVersion: 1, blanks }, null, 2)}\n`);
  else stdout.write(renderBlankList(blanks, describeTerminal(stdout, env, options)));
  if (blanks.length === 0)
    stderr.write(`No blank fits "${showHidden(words.join(' '))}". See blankcheck blanks for all of them.\n`);
  return 0;
}
