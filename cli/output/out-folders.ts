import type { Stats } from 'node:fs';
import { readdir, rm, rmdir, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { makeFolder } from './make-folder.ts';
import { RUN_RECORD_NAME } from './run-record-name.ts';

/** Which disk each folder lies on, by its path. */
export type KnownFolders = ReadonlyMap<string, number>;

/**
 * The folders that a run writes to. They are made once, when it begins: one that goes away later is not made anew, for
 * where a drive was pulled that would be on the disk beneath its mount point, and nobody would look there.
 */
export interface OutFolders {
  /**
   * Makes those that are not there, save what went away with its disk; why one cannot be made is told by whoever writes to
   * it. A watch begins anew with each file that lands.
   */
  begin(folders: Iterable<string>): Promise<void>;
  /** False for a folder that the run did not begin with. @throws Error where one that it did is gone, or lies on another disk */
  expect(folder: string): Promise<boolean>;
  /** For other processes of the run. */
  list(): KnownFolders;
  /** Takes away those that it made and that nothing was written to. */
  end(): Promise<void>;
}

export function createOutFolders(begunWith: KnownFolders = new Map()): OutFolders {
  const known = new Map(begunWith);
  const made: string[] = [];
  return {
    async begin(folders) {
      for (const folder of new Set(folders)) {
        try {
          const disk = known.get(folder);
          if (disk === undefined || (await wasTakenAway(folder, disk)))
            made.push(...(await makeFolder(folder)));
          known.set(folder, (await stat(folder)).dev);
        } catch {
          // It is told of each file that would go there.
        }
      }
    },
    async expect(folder) {
      const disk = known.get(folder);
      if (disk === undefined) return false;
      if ((await stat(folder)).dev !== disk)
        throw new Error('the disk that the folder was on went away, and another is in its place');
      return true;
    },
    list: () => known,
    async end() {
      for (const folder of made.toReversed()) {
        const names = await readdir(folder).catch(() => []);
        // A record of nothing that was written is of no use, and hidden: a folder that looks empty would stay.
        if (names.length === 1 && names[0] === RUN_RECORD_NAME)
          await rm(join(folder, RUN_RECORD_NAME), { force: true }).catch(() => undefined);
        await rmdir(folder).then(
          () => known.delete(folder),
          () => undefined,
        );
      }
      made.length = 0;
    },
  };
}

/** Is it gone from a disk that is still there? Where that was pulled, what is above its mount point lies on another. */
async function wasTakenAway(folder: string, disk: number): Promise<boolean> {
  if (await look(folder)) return false;
  let above = dirname(folder);
  let found = await look(above);
  while (!found && dirname(above) !== above) {
    above = dirname(above);
    found = await look(above);
  }
  return found?.dev === disk;
}

function look(path: string): Promise<Stats | null> {
  return stat(path).catch(() => null);
}
