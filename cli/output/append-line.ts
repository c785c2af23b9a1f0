import { type FileHandle, open } from 'node:fs/promises';
import { BlankcheckError } from '../../src/index.ts';
import { whyNotWritten } from './write-failure.ts';

/**
 * Adds a line to the end of a file, which is made where it is not there; `line` has no line end. What is there stays,
 * byte for byte: behind an end that was torn by a crash a new line is begun. All is one write at the end of the file
 * (O_APPEND, POSIX.1-2017 write), so that two writers cannot mix their lines on a local disk; network disks promise
 * less. On the disk when it returns. `told` is how messages call the file.
 * @throws BlankcheckError `cannot-write`
 */
export async function appendLine(path: string, told: string, line: string): Promise<void> {
  try {
    const file = await open(path, 'a+');
    try {
      if (!(await file.stat()).isFile()) throw new Error('it is no regular file');
      const bytes = Buffer.from(`${(await endsTorn(file)) ? '\n' : ''}${line}\n`);
      const { bytesWritten } = await file.write(bytes);
      // The rest must not follow in a second write: another writer may have come between.
      if (bytesWritten < bytes.length) throw new Error('only a part could be written; the disk may be full');
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (cause) {
    throw new BlankcheckError(
      'cannot-write',
      `Cannot write "${told}": ${whyNotWritten(cause)}. Mend that, or give another file with --ledger.`,
      { cause },
    );
  }
}

async function endsTorn(file: FileHandle): Promise<boolean> {
  const { size } = await file.stat();
  if (size === 0) return false;
  const { buffer, bytesRead } = await file.read(Buffer.alloc(1), 0, 1, size - 1);
  return bytesRead === 1 && buffer[0] !== 0x0a;
}
