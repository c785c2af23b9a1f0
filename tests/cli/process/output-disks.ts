import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { RUN_RECORD_NAME } from '../../../cli/output/run-record-name.ts';
import { writePng } from '../../../fixtures/byte-writers/write-png.ts';

/** Opaque pixels that no compression makes small, the same for the same seed: a few of them fill a small disk. */
export function makeNoise(seed: number, sidePx: number): Uint8Array {
  let state = seed;
  const samples = Array.from({ length: sidePx * sidePx * 4 }, (_, index) => {
    // The generator of POSIX.1-2017 rand(), its upper bits.
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return index % 4 === 3 ? 255 : state >>> 24;
  });
  return writePng({ widthPx: sidePx, heightPx: sidePx, colourType: 6, bitDepth: 8, samples });
}

/** A disk in memory, mounted there; null where that is refused, as to all but root and in many containers. */
export function mountDisk(
  path: string,
  options: string,
): { resize(size: string): void; end(): void; pull(): void } | null {
  mkdirSync(path, { recursive: true });
  const run = (command: string, ...args: string[]) => spawnSync(command, args).status === 0;
  if (process.platform !== 'linux' || !run('mount', '-t', 'tmpfs', '-o', options, 'tmpfs', path)) return null;
  return {
    resize: (size) => void run('mount', '-o', `remount,size=${size}`, path),
    end: () => void run('umount', path),
    // Also while files on it are open.
    pull: () => void run('umount', '-l', path),
  };
}

/** The files under a final name with their bytes; none where there is no folder. */
export function finalFiles(folder: string): ReadonlyMap<string, string> {
  const names = namesIn(folder).filter((name) => !name.endsWith('.tmp') && name !== RUN_RECORD_NAME);
  return new Map(names.map((name) => [name, readFileSync(join(folder, name)).toString('base64')]));
}

export function tempsIn(folder: string): readonly string[] {
  return namesIn(folder).filter((name) => name.endsWith('.tmp'));
}

function namesIn(folder: string): readonly string[] {
  return existsSync(folder) ? readdirSync(folder).sort() : [];
}
