import { availableParallelism, totalmem } from 'node:os';
import { BlankcheckError } from '../../src/index.ts';

/** How much may be done at once. */
export interface PoolSize {
  /** Processes, at least one. */
  readonly jobs: number;
  /** What their artworks may need together; one alone may need more. */
  readonly memoryBytes: number;
}

/** What a process takes before any picture. Own measurement: 110 to 140 MB with the imaging library and the tables of colours. */
export const IDLE_BYTES = 150_000_000;
const MOST_JOBS = 256;
const UNITS = { MB: 1e6, MiB: 2 ** 20, GB: 1e9, GiB: 2 ** 30, TB: 1e12, TiB: 2 ** 40 } as const;

/**
 * As many processes as there are cores, as far as they find room in the memory: a quarter of the machine, or of what a
 * container gives it, unless `--memory` says otherwise. `--jobs` replaces the number.
 * @throws BlankcheckError `bad-option`
 */
export function choosePoolSize(
  { jobs, memory }: { readonly jobs?: string | undefined; readonly memory?: string | undefined },
  machine: { readonly cores: number; readonly memoryBytes: number } = describeMachine(),
): PoolSize {
  const memoryBytes = memory === undefined ? machine.memoryBytes / 4 : parseMemory(memory);
  const room = Math.floor(memoryBytes / IDLE_BYTES);
  return {
    jobs: jobs === undefined ? Math.max(1, Math.min(machine.cores, room)) : parseJobs(jobs),
    memoryBytes,
  };
}

function describeMachine(): { readonly cores: number; readonly memoryBytes: number } {
  // 0 or more than there is where nothing constrains the process.
  const constrained = process.constrainedMemory();
  const memoryBytes = constrained > 0 ? Math.min(constrained, totalmem()) : totalmem();
  return { cores: availableParallelism(), memoryBytes };
}

function parseJobs(text: string): number {
  const jobs = Number(text);
  if (/^\d+$/.test(text) && jobs >= 1 && jobs <= MOST_JOBS) return jobs;
  throw new BlankcheckError(
    'bad-option',
    `Expected a whole number from 1 to ${MOST_JOBS} for --jobs, received "${text}".`,
  );
}

function parseMemory(text: string): number {
  const [, number, unit] = /^(\d+(?:\.\d+)?)\s*([a-z]+)$/i.exec(text.trim()) ?? [];
  const named = Object.entries(UNITS).find(([name]) => name.toLowerCase() === unit?.toLowerCase());
  const bytes = named ? Number(number) * named[1] : Number.NaN;
  if (bytes > 0) return bytes;
  throw new BlankcheckError(
    'bad-option',
    `Expected a size with its unit for --memory, received "${text}".\nWrite it as 2GB, 1.5GiB or 800MB.`,
  );
}
