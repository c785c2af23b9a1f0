import { open, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import type { InputGuard } from './input-guard.ts';
import type { OutFolders } from './out-folders.ts';
import { type FolderOption, publishFile } from './publish-file.ts';
import type { TempFiles } from './temp-files.ts';

export interface DocumentOptions {
  readonly cwd: string;
  readonly force: boolean;
  readonly temps: TempFiles;
  readonly folders?: OutFolders;
  readonly guard: InputGuard;
}

/** A text that a whole run, or a card, comes to. */
export interface OwnDocument {
  /** As it was named. */
  readonly path: string;
  readonly option: FolderOption;
  /** How every one of its kind begins. */
  readonly head: string;
  readonly text: string;
  /** As in PublishOptions. */
  readonly mode?: number;
}

/**
 * Writes a document; why it could not, null where it could. One of its kind from an earlier run is replaced, any other
 * file only by force.
 */
export async function publishDocument(
  { path: told, option, head, text, mode }: OwnDocument,
  { cwd, force, temps, folders, guard }: DocumentOptions,
): Promise<BlankcheckError | null> {
  const path = resolve(cwd, told);
  try {
    if (force) await guard.refuseInput(path, told, option);
    await publishFile({ path, told, folderOption: option }, Buffer.from(text), {
      replace: force || (await begins(path, head)),
      temps,
      folders,
      ...(mode !== undefined && { mode }),
    });
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}

/** Is there a file of this beginning? */
export async function begins(path: string, head: string): Promise<boolean> {
  const bytes = Buffer.alloc(Buffer.byteLength(head));
  try {
    // Opening a pipe that nobody writes to waits for ever.
    if (!(await stat(path)).isFile()) return false;
    const file = await open(path);
    try {
      await file.read(bytes, 0, bytes.length, 0);
    } finally {
      await file.close();
    }
    return bytes.toString() === head;
  } catch {
    return false;
  }
}
