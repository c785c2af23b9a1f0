import { setTimeout as wait } from 'node:timers/promises';

/** Time as a watch sees it, so that tests can drive it. */
export interface Clock {
  nowMs(): number;
  /** Ends early, without an error, when the signal says so. */
  sleep(ms: number, signal: AbortSignal): Promise<void>;
}

export const SYSTEM_CLOCK: Clock = {
  // Never set back, as the clock on the wall may be.
  nowMs: () => performance.now(),
  sleep: (ms, signal) =>
    wait(ms, undefined, { signal }).catch((error: unknown) => {
      if (!signal.aborted) throw error;
    }),
};
