import { link, open, rename } from 'node:fs/promises';
import { dirname } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import { isTaken } from './is-taken.ts';
import { makeFolder } from './make-folder.ts';
import type { OutFolders } from './out-folders.ts';
import { retryWhileBusy, WINDOWS_WAITS_MS } from './retry-while-busy.ts';
import type { TempFiles } from './temp-files.ts';
import { tellWhyNotWritten } from './write-failure.ts';

/** The option that names the folder of a file, or the file. */
export type FolderOption =
  | '--out'
  | '--proof'
  | '--picture'
  | '--csv'
  | '--report'
  | '--page'
  | '--to'
  | '--ledger';

export interface PublishedPath {
  readonly path: string;
  /** How messages call it. */
  readonly told: string;
  /** `--out` by default. */
  readonly folderOption?: FolderOption;
}

export interface PublishOptions {
  /** May a file that is there be replaced? */
  readonly replace: boolean;
  /** Who may read, write and run it, less what the system's mask takes away; 0o666 by default. @see open(2) */
  readonly mode?: number;
  readonly temps: TempFiles;
  /** Those that the run began with are not made anew. */
  readonly folders?: OutFolders | undefined;
  readonly signal?: AbortSignal;
}

/**
 * Writes a file so that under its name there is either all of it or what was there before: to a temporary file in the
 * same folder, synced, then given its name. A link of that name is replaced, never written through.
 * @throws BlankcheckError `file-exists` or `cannot-write`; whatever aborted the signal.
 */
export async function publishFile(
  { path, told, folderOption = '--out' }: PublishedPath,
  bytes: Uint8Array,
  { replace, temps, folders, signal, mode }: PublishOptions,
): Promise<void> {
  const folder = dirname(path);
  try {
    if (!(await folders?.expect(folder))) await makeFolder(folder);
    await temps.sweep(folder);
    const temp = temps.create(folder);
    try {
      await writeSynced(temp, bytes, signal, mode);
      signal?.throwIfAborted();
      // A drive that was pulled meanwhile: the name would stand beneath its mount point.
      await folders?.expect(folder);
      if (!(await giveName(temp, path, replace))) throw fileExists(told, folderOption);
    } finally {
      await temps.remove(temp);
    }
  } catch (cause) {
    signal?.throwIfAborted();
    if (cause instanceof BlankcheckError) throw cause;
    throw new BlankcheckError('cannot-write', tellWhyNotWritten(told, cause, folderOption), { cause });
  }
}

async function writeSynced(
  path: string,
  bytes: Uint8Array,
  signal: AbortSignal | undefined,
  mode: number | undefined,
): Promise<void> {
  const file = await open(path, 'wx', mode);
  try {
    await file.writeFile(bytes, signal ? { signal } : {});
    await file.sync();
  } finally {
    await file.close();
  }
}

/** False where the name is taken and may not be replaced. */
async function giveName(temp: string, path: string, replace: boolean): Promise<boolean> {
  if (!replace) {
    // A hard link fails where the name is taken, be it only since a moment ago; some file systems have none.
    const linked = await tryLink(temp, path);
    if (linked !== 'no-links') return linked === 'linked';
    if (await isTaken(path)) return false;
  }
  await retryWhileBusy(() => rename(temp, path), process.platform === 'win32' ? WINDOWS_WAITS_MS : []);
  return true;
}

async function tryLink(temp: string, path: string): Promise<'linked' | 'taken' | 'no-links'> {
  try {
    await link(temp, path);
    return 'linked';
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EEXIST' ? 'taken' : 'no-links';
  }
}

/** These name the file itself, and replace without force what is of their own kind. */
const NAMES_FILE: ReadonlySet<FolderOption> = new Set(['--csv', '--report', '--page']);

export function fileExists(path: string, folderOption: FolderOption = '--out'): BlankcheckError {
  const [doubt, other] = NAMES_FILE.has(folderOption)
    ? ['it is nothing that this option wrote before', 'name']
    : ['it may be of another size or other art', 'folder'];
  return new BlankcheckError(
    'file-exists',
    `"${path}" is there already and was left as it is: ${doubt}. Add --force to replace it, or give another ${other} with ${folderOption}.`,
  );
}
