import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { FileState } from './resting-files.ts';

/**
 * The files of a folder by their paths, hidden ones left out; with `recursive` also those below, but for hidden
 * folders and links to folders. null where the folder is not there, or cannot be read.
 */
export async function listStates(
  folder: string,
  recursive: boolean,
): Promise<ReadonlyMap<string, FileState> | null> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => null);
  if (entries === null) return null;
  const states = new Map<string, FileState>();
  for (const entry of entries) {
    if (entry.name.startsWith('.')) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      const below = recursive ? await listStates(path, true) : null;
      for (const [inner, state] of below ?? []) states.set(inner, state);
      continue;
    }
    // It may be gone by now.
    const stats = await stat(path).catch(() => null);
    if (stats?.isFile()) states.set(path, { bytes: stats.size, mtimeMs: stats.mtimeMs });
  }
  return states;
}
