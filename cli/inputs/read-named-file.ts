import { lstat, stat } from 'node:fs/promises';
import { readFileBounded } from './read-bounded.ts';

/** By their path. Of this process, as its open files are. */
const givenOnce = new Map<string, Uint8Array>();

/**
 * The bytes of a file that an option names. A pipe gives them once, and a file that is handed over as one that is open
 * already is to be had in this process only: what came from there is kept, since processes of the pool and every turn of
 * `--watch` ask again. @throws as readFileBounded
 */
export async function readNamedFile(
  path: string,
  signal: AbortSignal,
  maxBytes: number,
): Promise<Uint8Array> {
  const kept = givenOnce.get(path);
  if (kept) return kept;
  const isLasting = await lasts(path);
  const bytes = await readFileBounded(path, signal, maxBytes);
  if (!isLasting) givenOnce.set(path, bytes);
  return bytes;
}

/** Whether there is anything to read at a path, or was. */
export async function isNamedFileThere(path: string): Promise<boolean> {
  return givenOnce.has(path) || isThere(path);
}

/** What may not be looked at is there as far as anybody knows: whoever reads it tells why it cannot be. */
async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    ({ code }: NodeJS.ErrnoException) => code !== 'ENOENT' && code !== 'ENOTDIR' && code !== 'ENAMETOOLONG',
  );
}

/** What was given once so far, by path: for another process, which cannot have it. */
export function listGivenOnce(): ReadonlyMap<string, Uint8Array> {
  return givenOnce;
}

/** Takes over what another process was given once. */
export function takeOverGivenOnce(files: ReadonlyMap<string, Uint8Array>): void {
  for (const [path, bytes] of files) givenOnce.set(path, bytes);
}

async function lasts(path: string): Promise<boolean> {
  if (path.startsWith('/dev/')) return false;
  // What cannot be looked at is told of by whoever reads it.
  return stat(path).then(
    (stats) => stats.isFile(),
    () => true,
  );
}
