import type { Entry } from 'yauzl';
import type { ZipLimits } from './zip-limits.ts';

const STORED = 0;
const DEFLATED = 8;
/** File kinds in the upper half of the external attributes of Unix packers. @see POSIX.1-2017 sys/stat.h, S_IFMT */
const KIND_MASK = 0o170000;
const REGULAR = 0o100000;
const LINK = 0o120000;
const DIRECTORY = 0o040000;

/** Why an entry is refused whatever its content, judged by its directory record; null where it may be unpacked. */
export function findEntryFault(
  entry: Entry,
  name: string,
  timesNamed: number,
  limits: ZipLimits,
): string | null {
  const kind = (entry.externalFileAttributes >>> 16) & KIND_MASK;
  if (kind === LINK) return 'it is a link, not a file';
  if (kind !== 0 && kind !== REGULAR && kind !== DIRECTORY) return 'it is a device or a pipe, not a file';
  if (timesNamed > 1)
    return `${timesNamed} entries have this name, and which of them is meant cannot be told`;
  if (/\.zip$/i.test(name)) return 'it is an archive inside an archive';
  if (entry.isEncrypted()) return 'it is encrypted';
  if (entry.compressionMethod !== STORED && entry.compressionMethod !== DEFLATED)
    return `it is packed by method ${entry.compressionMethod}, which is not read (only stored and deflated are)`;
  if (entry.uncompressedSize > limits.entryBytes)
    return `it unpacks to ${entry.uncompressedSize} bytes, more than the limit of ${limits.entryBytes}`;
  const ratio = entry.uncompressedSize / Math.max(1, entry.compressedSize);
  if (ratio > limits.ratio && entry.uncompressedSize >= limits.ratioFromBytes)
    return `it unpacks to ${Math.round(ratio)} times its packed size, more than the limit of ${limits.ratio}`;
  return null;
}
