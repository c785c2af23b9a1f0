import type { Stats } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { hasArtworkName, sniffFormat } from '../../src/index.ts';
import { RUN_RECORD_NAME } from '../output/run-record-name.ts';
import { expandArchive } from './expand-archive.ts';
import { planFault, planFile } from './plan-file.ts';
import type { Expanded } from './planned-artwork.ts';
import { cannotRead, readHead } from './read-bounded.ts';

export interface FolderOptions {
  readonly recursive: boolean;
  readonly signal: AbortSignal;
  readonly looked?: (files: number) => void;
}

const NOTHING: Expanded = { artworks: [], passedOver: [] };

/**
 * The artworks of a folder by path in code units, ZIP archives opened. Passed over and counted are hidden files and
 * files that are no artwork, neither by name nor by content. Hidden folders and links to folders are not entered.
 * `path` is the folder as it is told, `folder` where it is on this machine.
 */
export async function expandFolder(path: string, folder: string, options: FolderOptions): Promise<Expanded> {
  const { names, closed } = await listNames(folder, '', options.recursive);
  const found = new Map<string, Expanded>();
  for (const [name, error] of closed)
    found.set(name, {
      artworks: [planFault(join(path, name), join(folder, name), cannotRead(error, 'folder'))],
      passedOver: [],
    });
  for (const name of names) {
    options.signal.throwIfAborted();
    found.set(name, await judgeFile(join(path, name), join(folder, name), options.signal));
    options.looked?.(found.size);
  }
  const inOrder = [...found].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, expanded]) => expanded);
  return {
    artworks: inOrder.flatMap(({ artworks }) => artworks),
    passedOver: inOrder.flatMap(({ passedOver }) => passedOver),
  };
}

interface Listing {
  /** What is no folder, relative to the folder that was asked for, with `/` between the parts. */
  readonly names: string[];
  /** Folders that cannot be read. */
  readonly closed: [name: string, error: unknown][];
}

async function listNames(folder: string, below: string, recursive: boolean): Promise<Listing> {
  const listing: Listing = { names: [], closed: [] };
  try {
    for (const entry of await readdir(join(folder, below), { withFileTypes: true })) {
      const name = below === '' ? entry.name : `${below}/${entry.name}`;
      // Of ours, and there since the last run only: it counts as nothing, so that the next tells the same.
      if (entry.name === RUN_RECORD_NAME) continue;
      if (!entry.isDirectory()) listing.names.push(name);
      else if (recursive && !entry.name.startsWith('.')) {
        const inner = await listNames(folder, name, true);
        listing.names.push(...inner.names);
        listing.closed.push(...inner.closed);
      }
    }
  } catch (error) {
    listing.closed.push([below, error]);
  }
  return listing;
}

/** One file that nobody named: an artwork, an archive of them, or passed over. */
export async function judgeFile(path: string, file: string, signal: AbortSignal): Promise<Expanded> {
  const name = basename(file);
  const passedOver: Expanded = { artworks: [], passedOver: [{ kind: 'file', file }] };
  let stats: Stats;
  if (name.startsWith('.')) return passedOver;
  try {
    stats = await stat(file);
  } catch (error) {
    return hasArtworkName(name)
      ? { artworks: [planFault(path, file, cannotRead(error))], passedOver: [] }
      : passedOver;
  }
  if (stats.isDirectory()) return NOTHING;
  if (!stats.isFile()) return passedOver;
  if (hasArtworkName(name) || sniffFormat(await readHead(file)))
    return { artworks: [planFile(path, file)], passedOver: [] };
  return /\.zip$/i.test(name) ? expandArchive(path, file, signal) : passedOver;
}
