import { setTimeout as wait } from 'node:timers/promises';

/** A virus scanner or an indexer holds a new file for a moment on Windows; together 485 ms. */
export const WINDOWS_WAITS_MS: readonly number[] = [5, 10, 20, 40, 60, 80, 120, 150];
const BUSY = new Set(['EPERM', 'EACCES', 'EBUSY']);

/** Does the action, again after each wait while it fails as busy files do; the last failure is thrown. */
export async function retryWhileBusy<Result>(
  action: () => Promise<Result>,
  waitsMs: readonly number[],
): Promise<Result> {
  for (const waitMs of waitsMs) {
    try {
      return await action();
    } catch (error) {
      if (!BUSY.has((error as NodeJS.ErrnoException).code ?? '')) throw error;
      await wait(waitMs);
    }
  }
  return action();
}
