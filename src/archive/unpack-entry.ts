import type { Readable } from 'node:stream';
import { crc32 } from 'node:zlib';
import type { Entry, ZipFile } from 'yauzl';
import { BlankcheckError } from '../blankcheck-error.ts';

/**
 * The whole content of an entry, held against what the directory says of it.
 * @throws BlankcheckError `archive-damaged` where packed data, size or CRC-32 do not agree.
 */
export async function unpackEntry(
  zip: ZipFile,
  entry: Entry,
  name: string,
  signal?: AbortSignal,
): Promise<Uint8Array> {
  const content = new Uint8Array(entry.uncompressedSize);
  let filled = 0;
  let sum = 0;
  for await (const chunk of chunksOf(zip, entry, name)) {
    signal?.throwIfAborted();
    if (filled + chunk.length > content.length)
      throw damaged(name, `it unpacks to more than the ${content.length} bytes it states`);
    content.set(chunk, filled);
    filled += chunk.length;
    sum = crc32(chunk, sum);
  }
  if (filled < content.length)
    throw damaged(name, `it unpacks to ${filled} bytes, and states ${content.length}`);
  if (sum !== entry.crc32) throw damaged(name, 'its checksum (CRC-32) is wrong');
  return content;
}

/** The first bytes of an entry, at most `length`, unpacked no further than needed; nothing is held against them. */
export async function unpackHead(
  zip: ZipFile,
  entry: Entry,
  name: string,
  length: number,
): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let filled = 0;
  for await (const chunk of chunksOf(zip, entry, name)) {
    parts.push(chunk.subarray(0, length - filled));
    filled += chunk.length;
    if (filled >= length) break;
  }
  return new Uint8Array(Buffer.concat(parts));
}

async function* chunksOf(zip: ZipFile, entry: Entry, name: string): AsyncGenerator<Uint8Array> {
  let stream: Readable | undefined;
  try {
    stream = await zip.openReadStreamPromise(entry);
    for await (const chunk of stream) yield chunk as Uint8Array;
  } catch (cause) {
    throw damaged(name, cause instanceof Error ? cause.message : String(cause), { cause });
  } finally {
    stream?.destroy();
  }
}

function damaged(name: string, what: string, options?: ErrorOptions): BlankcheckError {
  return new BlankcheckError(
    'archive-damaged',
    `The entry "${name}" is damaged: ${what}. Get the archive again, or unpack it and check the file by itself.`,
    options,
  );
}
