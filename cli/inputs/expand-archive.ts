import { basename, dirname, posix } from 'node:path';
import {
  BlankcheckError,
  hasArtworkName,
  openZip,
  sniffFormat,
  type ZipArchive,
  type ZipEntry,
} from '../../src/index.ts';
import { planFault, splitName } from './plan-file.ts';
import type { Expanded, Origin, PlannedArtwork } from './planned-artwork.ts';
import { HEAD_BYTES, readFileBounded } from './read-bounded.ts';

/**
 * The artworks of a ZIP archive by name; entries that are refused stand among them with their reason. Keeps no bytes.
 * An archive that cannot be read is one unreadable artwork.
 */
export async function expandArchive(path: string, file: string, signal: AbortSignal): Promise<Expanded> {
  let archive: ZipArchive;
  try {
    archive = await openZip(await readFileBounded(file, signal));
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    return { artworks: [planFault(path, file, error)], passedOver: 0 };
  }
  const artworks: PlannedArtwork[] = [];
  let passedOver = archive.sidecars;
  for (const entry of archive.entries) {
    signal.throwIfAborted();
    const origin = await originOf(archive, entry, file);
    if (origin) artworks.push(planEntry(path, file, entry.name, origin));
    else passedOver += 1;
  }
  if (archive.damage) artworks.push(planFault(path, file, archive.damage));
  return { artworks, passedOver };
}

/** null for an entry that is no artwork, neither by name nor by content. */
async function originOf(archive: ZipArchive, entry: ZipEntry, file: string): Promise<Origin | null> {
  if (entry.refusal) return { kind: 'fault', error: entry.refusal };
  const origin: Origin = { kind: 'entry', archive: file, entry: entry.name };
  if (hasArtworkName(entry.name)) return origin;
  try {
    return sniffFormat(await archive.readHead(entry, HEAD_BYTES)) ? origin : null;
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    return { kind: 'fault', error };
  }
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
