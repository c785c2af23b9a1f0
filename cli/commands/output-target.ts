import { resolve } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import type { InputGuard } from '../output/input-guard.ts';
import { isTaken } from '../output/is-taken.ts';
import type { OutFolders } from '../output/out-folders.ts';
import { type FolderOption, fileExists, publishFile } from '../output/publish-file.ts';
import type { TempFiles } from '../output/temp-files.ts';

export interface TargetOptions {
  readonly force: boolean;
  readonly cwd: string;
  readonly signal: AbortSignal;
  readonly guard: InputGuard;
  readonly temps: TempFiles;
  readonly folders: OutFolders;
}

/** Where a file goes, as it is told; null where none is wanted or may be written, then with the reason if there is one. */
export interface Target {
  readonly path: string | null;
  readonly folderOption: FolderOption;
  readonly refusal: BlankcheckError | null;
}

/** Asked before a pixel is resampled, so that no work is done for a file that may not be written. */
export async function findTarget(
  path: string | null | undefined,
  folderOption: FolderOption,
  options: TargetOptions,
): Promise<Target> {
  if (path === null || path === undefined) return { path: null, folderOption, refusal: null };
  const refusal = await findRefusal(path, folderOption, options);
  return { path: refusal ? null : path, folderOption, refusal };
}

async function findRefusal(
  told: string,
  folderOption: FolderOption,
  { cwd, force, guard }: TargetOptions,
): Promise<BlankcheckError | null> {
  const path = resolve(cwd, told);
  if (!force) return (await isTaken(path)) ? fileExists(told, folderOption) : null;
  try {
    await guard.refuseInput(path, told, folderOption);
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}

/** Why the file could not be written, null where it was. @throws whatever aborted the signal */
export async function publish(
  { path, folderOption }: Target,
  bytes: Uint8Array,
  { cwd, force, temps, folders, signal }: TargetOptions,
): Promise<BlankcheckError | null> {
  if (path === null) return null;
  try {
    await publishFile({ path: resolve(cwd, path), told: path, folderOption }, bytes, {
      replace: force,
      temps,
      folders,
      signal,
    });
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}
