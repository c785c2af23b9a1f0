import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { isTaken } from './is-taken.ts';

/**
 * Makes a folder and what is missing above it; comes back with those that were made, the uppermost first. One level after
 * the other: asked for all at once, Node 20 tries for ever where a file system has no folders to give.
 */
export async function makeFolder(folder: string): Promise<readonly string[]> {
  if (await isTaken(folder)) return [];
  const parent = dirname(folder);
  const above = parent === folder ? [] : await makeFolder(parent);
  const isMade = await mkdir(folder).then(
    () => true,
    (error: NodeJS.ErrnoException) => {
      // Another run may have made it meanwhile.
      if (error.code === 'EEXIST') return false;
      throw error;
    },
  );
  return isMade ? [...above, folder] : above;
}
