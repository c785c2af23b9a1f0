import { BlankcheckError } from '../blankcheck-error.ts';

/**
 * What `work` comes to, unless the clock or the signal is faster. The imaging library looks at its own time limit
 * only between strips of a picture, so that one hostile strip could hold it; whoever waits here is let go in time,
 * and the library's thread ends on its own.
 * @throws `too-slow`, or the signal's reason
 */
export async function withinSeconds<Result>(
  work: Promise<Result>,
  seconds: number,
  signal?: AbortSignal,
): Promise<Result> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let stop: (() => void) | undefined;
  const tooSlow = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(tooSlowError(seconds)), seconds * 1000);
    stop = () => reject(signal?.reason);
    signal?.addEventListener('abort', stop, { once: true });
  });
  try {
    return await Promise.race([work, tooSlow]);
  } finally {
    clearTimeout(timer);
    if (stop) signal?.removeEventListener('abort', stop);
  }
}

/** The library's own time limit is a whole number of seconds, 3600 at most. */
export function libraryTimeout(seconds: number): { seconds: number } {
  return { seconds: Math.min(3600, Math.ceil(seconds)) };
}

export function tooSlowError(seconds: number, options?: ErrorOptions): BlankcheckError {
  return new BlankcheckError(
    'too-slow',
    `The artwork takes more than ${seconds} s to decode, which a sound file does not. Export it again, or raise the limit maxSeconds (--limit maxSeconds=…).`,
    options,
  );
}
