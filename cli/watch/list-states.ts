import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { FileState } from './resting-files.ts';

/**
 * The files of a folder by their paths, hidden ones left out; with `recursive` also those below, but for hidden
 * folders and links to folders. null where the folder is not there, or cannot be read. `closed` is given folders below that
 * cannot be read.
 */
export async function listStates(
  folder: string,
  recursive: boolean,
  closed: (folder: string) => void,
): Promise<ReadonlyMap<string, FileState> | null> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => null);
  if (entries === null) return null;
  const states = new Map<string, FileState>();
  for (const entry of entries) {
    if (entry.name.startsWith('.')) continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!recursive) continue;
      const below = await listStates(path, true, closed);
      // One that is no longer there is not closed.
      if (below === null && (await stat(path).catch(() => null))) closed(path);
      for (const [inner, state] of below ?? []) states.set(inner, state);
      continue;
    }
    // It may be gone by now.
    const stats = await stat(path).catch(() => null);
    if (stats?.isFile()) states.set(path, { bytes: stats.size, mtimeMs: stats.mtimeMs });
  }
  return states;
}
