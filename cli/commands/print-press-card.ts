import { BlankcheckError, pressCard, renderPressCard } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { findBlankByWord } from '../inputs/find-blank-by-word.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';

/** `press`: the press card of one blank. @throws BlankcheckError of kind `usage`. */
export async function printPressCard(
  words: readonly string[],
  options: TypedOptions,
  { stdout, env, cwd }: Io,
): Promise<number> {
  const [word, ...more] = words;
  if (word === undefined)
    throw new BlankcheckError('missing-blank', 'No blank was given.\nSuch as blankcheck press mug-11oz.');
  if (more.length > 0)
    throw new BlankcheckError('bad-option', `Expected one blank, received ${words.length}.`);
  const card = pressCard(await findBlankByWord(word, cwd));
  if (options.json) stdout.write(`${JSON.stringify({ schemaVersion: 1, ...card }, null, 2)}\n`);
  else stdout.write(renderPressCard(card, describeTerminal(stdout, env, options)));
  return 0;
}
