import { BlankcheckError } from '../blankcheck-error.ts';
import { openZip } from './open-zip.ts';
import type { ZipLimits } from './zip-limits.ts';

export type ZipItem =
  | { readonly name: string; readonly bytes: Uint8Array }
  | { readonly name: string; readonly error: BlankcheckError };

/**
 * The files of a ZIP archive one after another, by name in code units, unpacked in memory as they are asked for; what
 * is refused or damaged comes as its error. Folders, hidden files and resource forks are left out. A directory that
 * breaks off is told last, under an empty name.
 * @throws BlankcheckError as `openZip` does.
 */
export async function* readZipEntries(
  bytes: Uint8Array,
  { limits, signal }: { readonly limits?: ZipLimits; readonly signal?: AbortSignal } = {},
): AsyncGenerator<ZipItem> {
  const archive = await openZip(bytes, limits);
  for (const entry of archive.entries) {
    try {
      yield { name: entry.name, bytes: await archive.read(entry, signal) };
    } catch (error) {
      if (!(error instanceof BlankcheckError)) throw error;
      yield { name: entry.name, error };
    }
  }
  if (archive.damage) yield { name: '', error: archive.damage };
}
