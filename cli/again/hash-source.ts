import { createHash } from 'node:crypto';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { ArtworkReader } from '../inputs/read-artworks.ts';

/** Hex SHA-256 of what an artwork is made of. */
export interface SourceHash {
  /** Of its bytes; of several formats, of their hashes: any of them may be the one that counts tomorrow. */
  readonly sha256: string;
  /** Of each of its formats that can be read. */
  readonly formats: readonly string[];
}

/** null where nothing of it can be read. */
export async function hashSource(artwork: PlannedArtwork, reader: ArtworkReader): Promise<SourceHash | null> {
  const all: (string | null)[] = [];
  for (const format of artwork.formats ?? [artwork]) {
    const bytes = await reader.read(format).catch(() => null);
    all.push(bytes && sha256Of(bytes));
  }
  const formats = all.filter((hash) => hash !== null);
  if (formats.length === 0) return null;
  return { sha256: all.length === 1 ? formats[0]! : sha256Of(JSON.stringify(all)), formats };
}

function sha256Of(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
