import { open, readFile, stat } from 'node:fs/promises';
import { BlankcheckError, LIMITS } from '../../src/index.ts';
import { readPipe } from './read-pipe.ts';

/** Enough for every signature, and for the first tag of a drawing behind its comments. */
export const HEAD_BYTES = 65_536;

/** The bytes of a file; of a pipe, whatever comes until it ends. @throws BlankcheckError `too-many-bytes`, `cannot-read`. */
export async function readFileBounded(
  path: string,
  signal: AbortSignal,
  maxBytes: number = LIMITS.maxBytes.value,
): Promise<Uint8Array> {
  try {
    const stats = await stat(path);
    if (stats.isFile()) {
      if (stats.size > maxBytes) throw tooManyBytes(stats.size, maxBytes);
      return await readFile(path, { signal });
    }
    if (stats.isFIFO()) return await collectBounded(readPipe(path, signal), maxBytes);
    const file = await open(path);
    return await collectBounded(file.createReadStream({ signal }), maxBytes);
  } catch (cause) {
    signal.throwIfAborted();
    throw cause instanceof BlankcheckError ? cause : cannotRead(cause);
  }
}

/** All bytes of a stream. @throws BlankcheckError `too-many-bytes` as soon as there are more than the limit. */
export async function collectBounded(
  stream: AsyncIterable<Uint8Array>,
  maxBytes: number = LIMITS.maxBytes.value,
): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of stream) {
    length += part.length;
    if (length > maxBytes) throw tooManyBytes(length, maxBytes);
    parts.push(part);
  }
  return Buffer.concat(parts, length);
}

/** The first bytes of a file, at most 64 KiB; empty where it cannot be read. */
export async function readHead(path: string): Promise<Uint8Array> {
  try {
    const file = await open(path);
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
      return buffer.subarray(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch {
    return new Uint8Array(0);
  }
}

/** Why a file that an option names is of no use, as part of a sentence: what mends an artwork does not mend a record. */
export function whyUnusable({ message }: BlankcheckError): string {
  const reason = message.replace(/\.\s.*$/s, '');
  return `${reason.charAt(0).toLowerCase()}${reason.slice(1)}`;
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'you may not read it',
  EPERM: 'you may not read it',
  ELOOP: 'its links lead in a circle',
  ENOENT: 'it is a link that leads nowhere, it went away, or its name is not spelt in UTF-8',
  EISDIR: 'it is a folder',
  EIO: 'the disk reports a fault',
  EBUSY: 'another program holds it',
};

/** Why a file, or a folder, that is there cannot be read. */
export function cannotRead(cause: unknown, what: 'file' | 'folder' = 'file'): BlankcheckError {
  const code = (cause as NodeJS.ErrnoException).code;
  const told = code === undefined ? undefined : REASONS[code];
  const reason = told ? `${told} (${code})` : cause instanceof Error ? cause.message : String(cause);
  return new BlankcheckError(
    'cannot-read',
    `The ${what} cannot be read: ${reason}. Mend that, or leave the ${what} out.`,
    {
      cause,
    },
  );
}

function tooManyBytes(bytes: number, maxBytes: number): BlankcheckError {
  return new BlankcheckError(
    'too-many-bytes',
    `Expected at most ${maxBytes} bytes, received ${bytes} or more. Export a smaller file, or raise the limit with --limit maxBytes=<n>.`,
  );
}
