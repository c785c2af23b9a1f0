import { readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import { isTaken } from '../output/is-taken.ts';
import { expandBraces, looksLikeGlob, matchName } from './match-name.ts';

/**
 * The paths that a pattern stands for, as relative or absolute as it is, by code units: `*`, `?`, `[a-z]`, `{a,b}`, and `**`
 * for folders below each other, links to folders not followed. Hidden names are matched by a pattern with their dot only.
 * @throws BlankcheckError `bad-option` where its braces stand for more than a thousand patterns
 */
export async function expandGlob(pattern: string, cwd: string): Promise<readonly string[]> {
  const found = new Set<string>();
  const patterns = expandBraces(pattern);
  if (patterns === null)
    throw new BlankcheckError(
      'bad-option',
      `The braces of "${pattern.slice(0, 60)}" stand for more than 1000 patterns.\nName the folder, or write * for what may be anything.`,
    );
  for (const one of patterns) {
    const parts = one.split('/').filter((part, index) => part !== '' || index === 0);
    const isAbsolute = parts[0] === '';
    const start = isAbsolute ? '/' : '';
    for (const path of await walk(start, isAbsolute ? parts.slice(1) : parts, cwd)) found.add(path);
  }
  const there = await Promise.all([...found].map((path) => isTaken(resolve(cwd, path))));
  return [...found].filter((_, index) => there[index]).sort((a, b) => (a < b ? -1 : 1));
}

async function walk(path: string, parts: readonly string[], cwd: string): Promise<readonly string[]> {
  const [part, ...rest] = parts;
  if (part === undefined) return path === '' ? [] : [path];
  if (part === '**') {
    const here = rest.length === 0 ? await walk(path, ['*'], cwd) : await walk(path, rest, cwd);
    const below = await list(path, cwd, (name, isFolder) => isFolder && !name.startsWith('.'));
    if (below === null) return [path];
    const deeper = await Promise.all(below.map((name) => walk(join(path, name), parts, cwd)));
    return [...here, ...deeper.flat()];
  }
  // What no pattern stands in need not be listed, and `.` and `..` never are.
  if (!looksLikeGlob(part)) return walk(join(path, part), rest, cwd);
  const isMatch = matchName(part);
  const names = await list(path, cwd, (name, isFolder) => isMatch(name) && (rest.length === 0 || isFolder));
  if (names === null) return [path];
  return (await Promise.all(names.map((name) => walk(join(path, name), rest, cwd)))).flat();
}

/** null where the folder is there and closed: then it is among what was found itself, and told of. */
async function list(
  path: string,
  cwd: string,
  wanted: (name: string, isFolder: boolean) => boolean,
): Promise<readonly string[] | null> {
  const entries = await readdir(resolve(cwd, path), { withFileTypes: true }).catch(
    ({ code }: NodeJS.ErrnoException) => (code === 'ENOENT' || code === 'ENOTDIR' ? [] : null),
  );
  if (entries === null) return null;
  return entries.filter((entry) => wanted(entry.name, entry.isDirectory())).map(({ name }) => name);
}
