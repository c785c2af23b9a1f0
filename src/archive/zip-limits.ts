/** How far an archive is unpacked. Raised only by whoever calls, never by what an archive says of itself. */
export interface ZipLimits {
  /** Records in the directory, folders included. */
  readonly entries: number;
  /** Unpacked bytes of one entry. */
  readonly entryBytes: number;
  /** Unpacked bytes of all entries that were read. */
  readonly totalBytes: number;
  /** Unpacked over packed bytes of one entry; deflate itself ends at 1032 (RFC 1951: 258 bytes in 2 bits). */
  readonly ratio: number;
  /** Entries that unpack to less than this are never judged by their ratio: a small blank page packs well. */
  readonly ratioFromBytes: number;
}

/** Common practice, no source: art seldom packs better than 1:50, and a pack of art rarely holds more than a gigabyte. */
export const ZIP_LIMITS: ZipLimits = {
  entries: 10_000,
  entryBytes: 512 * 1024 ** 2,
  totalBytes: 4 * 1024 ** 3,
  ratio: 250,
  ratioFromBytes: 8 * 1024 ** 2,
};
