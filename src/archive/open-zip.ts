import type { Entry, ZipFile } from 'yauzl';
import { BlankcheckError } from '../blankcheck-error.ts';
import { findEntryFault } from './entry-fault.ts';
import { decodeEntryName, findNameFault, isSidecarName } from './entry-name.ts';
import { unpackEntry, unpackHead } from './unpack-entry.ts';
import { ZIP_LIMITS, type ZipLimits } from './zip-limits.ts';

/** One file of an archive; folders are no entries. */
export interface ZipEntry {
  /** With `/` between folders; may hold anything when `refusal` says so. */
  readonly name: string;
  /** Unpacked, as the directory states. */
  readonly bytes: number;
  /** `archive-entry-refused` where the entry is dangerous or cannot be unpacked; null otherwise. */
  readonly refusal: BlankcheckError | null;
}

/** An archive that stays in memory: nothing of it is ever written to a disk. */
export interface ZipArchive {
  /** In the order of their names, by code units. */
  readonly entries: readonly ZipEntry[];
  /** Resource forks and hidden files, which are left out of `entries`. */
  readonly sidecars: number;
  /** Why the directory ends early; the entries before are there. */
  readonly damage: BlankcheckError | null;
  /** The first bytes of an entry, at most `length`. @throws BlankcheckError as `read` does. */
  readHead(entry: ZipEntry, length: number): Promise<Uint8Array>;
  /** @throws BlankcheckError its refusal, `archive-entry-refused` over the limits, `archive-damaged`. */
  read(entry: ZipEntry, signal?: AbortSignal): Promise<Uint8Array>;
}

/**
 * Reads the directory of a ZIP archive (APPNOTE.TXT 6.3.x, ZIP64 included) and judges every entry by itself, so
 * that one dangerous entry does not cost the others.
 * @throws BlankcheckError `archive-damaged` where no directory is found, `archive-entry-refused` for too many entries.
 */
export async function openZip(bytes: Uint8Array, limits: ZipLimits = ZIP_LIMITS): Promise<ZipArchive> {
  const yauzl = await import('yauzl');
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const options = { decodeStrings: false, validateEntrySizes: false };
  const zip = await yauzl.fromBufferPromise(buffer, options).catch((cause: unknown) => {
    throw damagedArchive('no readable directory of entries was found in it', cause);
  });
  if (zip.entryCount > limits.entries) {
    throw new BlankcheckError(
      'archive-entry-refused',
      `Expected at most ${limits.entries} entries in an archive, received ${zip.entryCount}. Unpack it, and check the folder.`,
    );
  }
  const named: { name: string; entry: Entry }[] = [];
  const damage = await readDirectory(zip, (entry) => {
    named.push({ name: decodeEntryName(entry, yauzl.getFileNameLowLevel), entry });
  });
  return archiveOf(zip, named, damage, limits);
}

async function readDirectory(zip: ZipFile, take: (entry: Entry) => void): Promise<BlankcheckError | null> {
  let taken = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      take(entry);
      taken += 1;
    }
    return null;
  } catch (cause) {
    return damagedArchive(
      `its directory cannot be read beyond ${taken} of ${zip.entryCount} entries; those were read`,
      cause,
    );
  }
}

function archiveOf(
  zip: ZipFile,
  named: readonly { name: string; entry: Entry }[],
  damage: BlankcheckError | null,
  limits: ZipLimits,
): ZipArchive {
  const times = new Map<string, number>();
  for (const { name } of named) times.set(name, (times.get(name) ?? 0) + 1);
  const records = new Map<ZipEntry, Entry>();
  let sidecars = 0;
  for (const { name, entry } of named) {
    const nameFault = findNameFault(name);
    if (nameFault === null && isSidecarName(name)) {
      if (!name.endsWith('/')) sidecars += 1;
      continue;
    }
    if (nameFault === null && name.endsWith('/')) continue;
    const fault =
      nameFault !== null ? `its name ${nameFault}` : findEntryFault(entry, name, times.get(name)!, limits);
    records.set(
      { name, bytes: entry.uncompressedSize, refusal: fault === null ? null : refused(name, fault) },
      entry,
    );
  }

  let unpackedBytes = 0;
  const counted = new Set<ZipEntry>();
  const recordOf = (entry: ZipEntry): Entry => {
    if (entry.refusal) throw entry.refusal;
    return records.get(entry)!;
  };
  return {
    entries: [...records.keys()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0)),
    sidecars,
    damage,
    readHead: async (entry, length) => unpackHead(zip, recordOf(entry), entry.name, length),
    async read(entry, signal) {
      const record = recordOf(entry);
      // Once, however often it is read: it is never there twice.
      if (!counted.has(entry)) unpackedBytes += record.uncompressedSize;
      counted.add(entry);
      if (unpackedBytes > limits.totalBytes)
        throw refused(entry.name, `with it more than ${limits.totalBytes} bytes are unpacked in all`);
      return unpackEntry(zip, record, entry.name, signal);
    },
  };
}

function refused(name: string, why: string): BlankcheckError {
  return new BlankcheckError(
    'archive-entry-refused',
    `The entry "${name}" is refused: ${why}. Get it as a plain file, and check that.`,
  );
}

function damagedArchive(what: string, cause: unknown): BlankcheckError {
  return new BlankcheckError('archive-damaged', `The archive is damaged: ${what}. Get it again.`, { cause });
}
