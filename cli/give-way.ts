import { setImmediate as nextTurn } from 'node:timers/promises';
import type { GiveWay } from '../src/index.ts';

/** So long may work go on before an interrupt is seen: nobody feels it, and looking costs nothing. */
const WORK_MS = 50;

/** Lets what came in the meantime be seen, every now and then. @throws whatever aborted the signal */
export function giveWayTo(signal: AbortSignal, nowMs: () => number = () => performance.now()): GiveWay {
  let sinceMs = nowMs();
  const rest = async () => {
    await nextTurn();
    signal.throwIfAborted();
    sinceMs = nowMs();
  };
  return () => (nowMs() - sinceMs < WORK_MS ? undefined : rest());
}
