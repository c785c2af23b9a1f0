import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, rmSync } from 'node:fs';
import { lstat, readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';

/** `.blankcheck-<machine>-<process>-<random>.tmp`: hidden, short, and it tells whose it is. */
const TEMP_NAME = /^\.blankcheck-([0-9a-f]{8})-(\d+)-[0-9a-f]{12}\.tmp$/;
const MACHINE = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
/** No run holds a temporary file for a day; older ones are left by a killed run, whoever has its process id now. */
const STALE_MS = 24 * 3600 * 1000;

/** The open ones of this process, whichever run in it has made them: its id alone does not tell them from those of a process that had the same id before. */
const OPEN_IN_PROCESS = new Set<string>();

/** The temporary files of this run, so that none outlives it. */
export interface TempFiles {
  /** A new name in the folder, remembered until it is removed. */
  create(folder: string): string;
  /** Removes one, if it is still there. */
  remove(path: string): Promise<void>;
  /** Removes all at once, for a process that ends now. */
  removeAllNow(): void;
  /** Another process of this run makes temporary files of its own in the folder, and ends with this one. */
  adopt(pid: number, folder: string): void;
  /** Removes what an adopted process that has ended left, and forgets it. */
  release(pid: number): void;
  /** Removes what killed runs have left in the folder, once per folder and run. */
  sweep(folder: string): Promise<void>;
}

export function createTempFiles(): TempFiles {
  const open = new Set<string>();
  const swept = new Set<string>();
  const adopted = new Map<number, Set<string>>();
  const removeLeftBy = (pid: number) => {
    for (const folder of adopted.get(pid) ?? [])
      for (const name of namesIn(folder))
        if (isTempOf(pid, name)) rmSync(join(folder, name), { force: true });
  };
  return {
    create(folder) {
      const path = join(
        folder,
        `.blankcheck-${MACHINE}-${process.pid}-${randomBytes(6).toString('hex')}.tmp`,
      );
      open.add(path);
      OPEN_IN_PROCESS.add(path);
      return path;
    },
    async remove(path) {
      // One that cannot be removed now is swept by a later run.
      await rm(path, { force: true }).catch(() => undefined);
      open.delete(path);
      OPEN_IN_PROCESS.delete(path);
    },
    removeAllNow() {
      for (const path of open) {
        rmSync(path, { force: true });
        OPEN_IN_PROCESS.delete(path);
      }
      open.clear();
      for (const pid of adopted.keys()) {
        endProcess(pid);
        removeLeftBy(pid);
      }
      adopted.clear();
    },
    adopt(pid, folder) {
      adopted.set(pid, (adopted.get(pid) ?? new Set()).add(folder));
    },
    release(pid) {
      removeLeftBy(pid);
      adopted.delete(pid);
    },
    async sweep(folder) {
      if (swept.has(folder)) return;
      swept.add(folder);
      for (const name of await readdir(folder).catch(() => [])) {
        const path = join(folder, name);
        if (TEMP_NAME.test(name) && !OPEN_IN_PROCESS.has(path) && (await isStale(path, name)))
          await rm(path, { force: true }).catch(() => undefined);
      }
    },
  };
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function isTempOf(pid: number, name: string): boolean {
  const [, machine, of] = TEMP_NAME.exec(name) ?? [];
  return machine === MACHINE && Number(of) === pid;
}

function endProcess(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has ended by itself.
  }
}

async function isStale(path: string, name: string): Promise<boolean> {
  const [, machine, pid] = TEMP_NAME.exec(name)!;
  // Ours, and not one of the open ones: an earlier process had the same id, as in a container.
  if (machine === MACHINE && (Number(pid) === process.pid || !isRunning(Number(pid)))) return true;
  const stats = await lstat(path).catch(() => null);
  return stats !== null && Date.now() - stats.mtimeMs > STALE_MS;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
