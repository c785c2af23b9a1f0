import { join } from 'node:path';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import { nameOutputs } from './name-outputs.ts';

const DEFAULT_FOLDER = 'print-ready';
const EXTENSIONS = { png: 'png', tiff: 'tif' } as const;

export interface OutputOptions {
  readonly blankId: string;
  readonly format: 'png' | 'tiff';
  /** One folder for all; left out, `print-ready` beside each artwork. */
  readonly out?: string | undefined;
}

/** Where the print-ready file of each artwork of a run goes, as relative or absolute as the artwork, or `out`, was given. */
export function planOutputPaths(
  artworks: readonly PlannedArtwork[],
  { blankId, format, out }: OutputOptions,
): ReadonlyMap<PlannedArtwork, string> {
  const readable = artworks.filter(({ origin }) => origin.kind !== 'fault');
  const folders = readable.map(({ folder }) => out ?? join(folder, DEFAULT_FOLDER));
  const names = nameOutputs(
    readable.map(({ stem, extension, parent, path }, index) => ({
      folder: folders[index]!,
      stem,
      extension,
      parent,
      path,
    })),
    blankId,
    EXTENSIONS[format],
  );
  return new Map(readable.map((artwork, index) => [artwork, join(folders[index]!, names[index]!)]));
}
