import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { findPackageFolder } from '../package-folder.ts';

/** The page of docs/findings/ on a check, as Markdown. */
export function readFindingPage(check: string): Promise<string> {
  return readFile(join(findPackageFolder(), 'docs', 'findings', `${check}.md`), 'utf8');
}
