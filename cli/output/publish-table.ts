import { open } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type ArtworkReport, BlankcheckError, RUN_CSV_HEAD, renderRunCsv } from '../../src/index.ts';
import type { InputGuard } from './input-guard.ts';
import { publishFile } from './publish-file.ts';
import type { TempFiles } from './temp-files.ts';

export interface TableOptions {
  readonly cwd: string;
  readonly force: boolean;
  readonly temps: TempFiles;
  readonly guard: InputGuard;
}

/**
 * Writes the table of a run; why it could not, null where it could. One of an earlier run is replaced, any other file only
 * by force.
 */
export async function publishTable(
  told: string,
  results: readonly ArtworkReport[],
  { cwd, force, temps, guard }: TableOptions,
): Promise<BlankcheckError | null> {
  const path = resolve(cwd, told);
  try {
    if (force) await guard.refuseInput(path, told, '--csv');
    await publishFile({ path, told, folderOption: '--csv' }, Buffer.from(renderRunCsv(results)), {
      replace: force || (await isOwn(path)),
      temps,
    });
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}

async function isOwn(path: string): Promise<boolean> {
  const head = Buffer.alloc(Buffer.byteLength(RUN_CSV_HEAD));
  try {
    const file = await open(path);
    try {
      await file.read(head, 0, head.length, 0);
    } finally {
      await file.close();
    }
    return head.toString() === RUN_CSV_HEAD;
  } catch {
    return false;
  }
}
