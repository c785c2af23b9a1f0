import type { TempFiles } from './output/temp-files.ts';

/** What an interrupted run's signal is aborted with. */
export interface Interruption {
  readonly interruptedBy: NodeJS.Signals;
}

const SIGNALS: readonly NodeJS.Signals[] = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/**
 * Aborted by the first Ctrl-C (or termination, or a closed terminal), so that the run can tidy up and say what was
 * done. The second ends the process at once, and leaves no temporary file either.
 */
export function watchInterrupts(temps: TempFiles): AbortSignal {
  const controller = new AbortController();
  const caught = (name: NodeJS.Signals) => {
    if (!controller.signal.aborted) {
      controller.abort({ interruptedBy: name } satisfies Interruption);
      return;
    }
    temps.removeAllNow();
    // The system ends the process then: process.exit would wait for a file that never opens.
    for (const signal of SIGNALS) process.removeListener(signal, caught);
    process.kill(process.pid, name);
  };
  for (const name of SIGNALS) process.on(name, caught);
  return controller.signal;
}

/** Which signal interrupted the run, if one did. */
export function interruptionOf(signal: AbortSignal): NodeJS.Signals | null {
  return signal.aborted ? (signal.reason as Interruption).interruptedBy : null;
}
