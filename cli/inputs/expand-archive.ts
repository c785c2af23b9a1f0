import { basename, dirname, posix } from 'node:path';
import {
  BlankcheckError,
  findHeaderSize,
  hasArtworkName,
  openZip,
  sniffFormat,
  ZIP_LIMITS,
  type ZipArchive,
  type ZipEntry,
} from '../../src/index.ts';
import { groupFormats } from './group-formats.ts';
import { originOf, planFault, splitName } from './plan-file.ts';
import type { Expanded, Origin, PlannedArtwork } from './planned-artwork.ts';
import { HEAD_BYTES, readFileBounded } from './read-bounded.ts';

/**
 * The artworks of a ZIP archive by name; entries that are refused stand among them with their reason. Keeps no bytes.
 * Several formats of one artwork are one. An archive that cannot be read is one unreadable artwork.
 */
export async function expandArchive(path: string, file: string, signal: AbortSignal): Promise<Expanded> {
  let archive: ZipArchive;
  try {
    archive = await openZip(await readFileBounded(file, signal));
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    return { artworks: [planFault(path, file, error)], passedOver: [] };
  }
  const artworks: PlannedArtwork[] = [];
  const passedOver: Origin[] = Array.from({ length: archive.sidecars }, (_, index) =>
    // They have no name here; none of an entry begins with a slash.
    ({ kind: 'entry', archive: file, entry: `/${index}` }),
  );
  let bytes = 0;
  for (const entry of archive.entries) {
    signal.throwIfAborted();
    const looked = await lookAt(archive, entry, file);
    if (looked === null) {
      passedOver.push({ kind: 'entry', archive: file, entry: entry.name });
      continue;
    }
    bytes += looked.entry?.bytes ?? 0;
    // By the directory and in its order, so that it matters not which of them are read first, or by whom.
    const origin: Origin = bytes > ZIP_LIMITS.totalBytes ? originOf(overTotal(entry.name)) : looked.origin;
    artworks.push({
      ...planEntry(path, file, entry.name, origin),
      ...(looked.entry && { entry: looked.entry }),
    });
  }
  const grouped = [...groupFormats(artworks)];
  if (archive.damage) grouped.push(planFault(path, file, archive.damage));
  return { artworks: grouped, passedOver };
}

interface LookedAt extends Pick<PlannedArtwork, 'entry'> {
  readonly origin: Origin;
}

/** null for an entry that is no artwork, neither by name nor by content. */
async function lookAt(archive: ZipArchive, entry: ZipEntry, file: string): Promise<LookedAt | null> {
  if (entry.refusal) return { origin: originOf(entry.refusal) };
  try {
    const head = await archive.readHead(entry, HEAD_BYTES);
    if (!hasArtworkName(entry.name) && !sniffFormat(head)) return null;
    return {
      origin: { kind: 'entry', archive: file, entry: entry.name },
      entry: { bytes: entry.bytes, size: findHeaderSize(head) },
    };
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    return { origin: originOf(error) };
  }
}

function overTotal(name: string): BlankcheckError {
  return new BlankcheckError(
    'archive-entry-refused',
    `The entry "${name}" is refused: with it more than ${ZIP_LIMITS.totalBytes} bytes are unpacked in all. Get it as a plain file, and check that.`,
  );
}

function planEntry(path: string, file: string, entry: string, origin: Origin): PlannedArtwork {
  const { stem, extension } = splitName(posix.basename(entry));
  const within = posix.dirname(entry);
  return {
    path: `${path}/${entry}`,
    origin,
    folder: dirname(path),
    stem: `${splitName(basename(file)).stem}.${stem}`,
    extension,
    parent: within === '.' ? basename(dirname(file)) : posix.basename(within),
  };
}
