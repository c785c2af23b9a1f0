import { lstat } from 'node:fs/promises';

/** Is there something of this name, be it a link that leads nowhere? */
export async function isTaken(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}
