import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';

/** A shell has the writer of a pipe ready in far less; without end, a pipe that was left behind would never be told of (own choice). */
const MAX_WAIT_MS = 5000;
/** Between two looks. */
const FIRST_MS = 20;
const NEXT_MS = 1;
const PART_BYTES = 65_536;

/**
 * What comes through a pipe that has a name, until it ends. Opened so that neither that nor reading waits where nobody can
 * call it back (O_NONBLOCK, POSIX.1-2017 open): a pipe without a writer ends at once, one whose writer rests has EAGAIN.
 * @throws Error where nobody wrote to it for 5 s; whatever aborted the signal
 */
export async function* readPipe(path: string, signal: AbortSignal): AsyncGenerator<Uint8Array> {
  const file = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    let hasWriter = false;
    const giveUpMs = Date.now() + MAX_WAIT_MS;
    for (;;) {
      signal.throwIfAborted();
      const part = await file.read(Buffer.alloc(PART_BYTES), 0, PART_BYTES, null).catch(nullWhereItRests);
      if (part !== null && part.bytesRead > 0) yield part.buffer.subarray(0, part.bytesRead);
      else if (part !== null && hasWriter) return;
      else if (part !== null && Date.now() > giveUpMs)
        throw new Error('it is not a file but a pipe, and nobody writes to it');
      hasWriter ||= part === null || part.bytesRead > 0;
      if (part === null || part.bytesRead === 0) await wait(hasWriter ? NEXT_MS : FIRST_MS);
    }
  } finally {
    await file.close();
  }
}

function nullWhereItRests(error: NodeJS.ErrnoException): null {
  if (error.code === 'EAGAIN') return null;
  throw error;
}
