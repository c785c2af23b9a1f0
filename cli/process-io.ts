import type { ReadStream, WriteStream } from 'node:tty';
import { BlankcheckError } from '../src/index.ts';
import { printError } from './errors.ts';
import type { ByteStream, Io, TextStream } from './io.ts';
import { whyNotWritten } from './output/write-failure.ts';

/** The outside of this process; `lost` is called where standard output could not take the data. */
export function processIo(interrupt: AbortSignal, lost: () => void): Io {
  const stderr = textTo(process.stderr, () => undefined);
  const stdout = textTo(process.stdout, (error) => {
    printError(
      stderr,
      new BlankcheckError(
        'cannot-write',
        `Cannot write to standard output: ${whyNotWritten(error)}.\nMend that, or send it elsewhere; files that were written are whole.`,
      ),
    );
    lost();
  });
  return { stdin: standardInput(), stdout, stderr, env: process.env, cwd: process.cwd(), interrupt };
}

function textTo(stream: NodeJS.WriteStream, failed: (error: Error) => void): TextStream {
  let open = true;
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // A reader that went away (`| head -1`) ends the telling, not the work.
    if (open && error.code !== 'EPIPE') failed(error);
    open = false;
  });
  return {
    write: (text) => {
      if (open) stream.write(text);
    },
    isTTY: stream.isTTY === true,
    get columns() {
      return (stream as WriteStream).columns;
    },
  };
}

/** Touched only when it is read: where there is none, asking for it may already fail. */
function standardInput(): ByteStream {
  return {
    get isTTY() {
      return (process.stdin as ReadStream).isTTY === true;
    },
    stop: () => process.stdin.destroy(),
    [Symbol.asyncIterator]: () => process.stdin[Symbol.asyncIterator]() as AsyncIterator<Uint8Array>,
  };
}
