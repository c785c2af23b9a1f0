import type { ErrorCode, HeaderSize } from '../../src/index.ts';

/** Where the bytes of an artwork are; paths are those of this machine. */
export type Origin =
  | { readonly kind: 'stdin' }
  | { readonly kind: 'file'; readonly file: string }
  | { readonly kind: 'entry'; readonly archive: string; readonly entry: string }
  /** Nowhere: it is unreadable for this reason, as data, since an error of ours comes out of another process as any other. */
  | { readonly kind: 'fault'; readonly error: { readonly code: ErrorCode; readonly message: string } };

/** An artwork of a run, found and not yet read. */
export interface PlannedArtwork {
  /** As told to people: as relative or absolute as it was given; an entry stands behind its archive and a slash. */
  readonly path: string;
  readonly origin: Origin;
  /** Folder of the file, or of the archive that holds it; as relative or absolute as it was given. */
  readonly folder: string;
  /** `pear` and `png` of `pear.png`; `pack.pear` of an entry of `pack.zip`. */
  readonly stem: string;
  readonly extension: string;
  /** Name of the folder that it lies in, within its archive if it has one there. */
  readonly parent: string;
  /** What the directory and the first bytes of an entry say of it; left out for files of their own. */
  readonly entry?: { readonly bytes: number; readonly size: HeaderSize | null };
  /** Several formats of it in one archive, itself the first of them; left out where there is one only. */
  readonly formats?: readonly PlannedArtwork[];
}

/** What a folder or an archive holds. */
export interface Expanded {
  readonly artworks: readonly PlannedArtwork[];
  /** Files and entries that are no artwork. */
  readonly passedOver: readonly Origin[];
}
