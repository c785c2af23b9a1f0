import type { Io } from './io.ts';

/** Waits for a line at the terminal, so that a window that opened for this run stays; not where nobody could type one. */
export async function waitForReturn({ stdin, stderr, interrupt }: Io): Promise<void> {
  if (!stdin.isTTY || interrupt.aborted) return;
  stderr.write('\nPress Return to close. ');
  const stop = () => stdin.stop();
  interrupt.addEventListener('abort', stop);
  try {
    for await (const bytes of stdin) if (bytes.includes(10) || bytes.includes(13)) break;
  } catch {
    // The terminal went away or an interrupt came: either ends the waiting.
  } finally {
    interrupt.removeEventListener('abort', stop);
    stop();
  }
}
