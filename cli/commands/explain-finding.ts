import { BlankcheckError, CHECKS, nearestIds, renderFindingPage } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { readFindingPage } from '../inputs/read-finding-page.ts';
import type { Io } from '../io.ts';
import { describeTerminal } from '../terminal.ts';

/**
 * `explain`: the page on a check, a code of it (`check/code`), or every check that has a code of this name; without a
 * word, the list of them. @throws BlankcheckError `unknown-finding`
 */
export async function explainFindings(
  words: readonly string[],
  options: TypedOptions,
  { stdout, env }: Io,
): Promise<number> {
  const page = describeTerminal(stdout, env, options);
  if (words.length === 0) {
    for (const { id, title, codes } of CHECKS)
      stdout.write(`${id}: ${title} (${Object.keys(codes).join(', ')})\n`);
    return 0;
  }
  const ids = [...new Set(words.flatMap(findChecks))];
  const pages = await Promise.all(ids.map(readFindingPage));
  stdout.write(pages.map((text) => renderFindingPage(text, page)).join('\n'));
  return 0;
}

function findChecks(word: string): readonly string[] {
  const [asked, code] = word.toLowerCase().split('/') as [string, string | undefined];
  const found = CHECKS.filter(({ id, codes }) => {
    if (code !== undefined) return id === asked && code in codes;
    return id === asked || asked in codes;
  });
  if (found.length > 0) return found.map(({ id }) => id);
  const names = CHECKS.flatMap(({ id, codes }) => [id, ...Object.keys(codes)]);
  const near = nearestIds(asked, names, 3);
  throw new BlankcheckError(
    'unknown-finding',
    `Expected a check or a code of one, received "${word}".\n${near.length > 0 ? `Did you mean ${near.join(', ')}? ` : ''}blankcheck explain lists them all.`,
  );
}
