/**
 * A file that holds the same bytes as were given: large ones are let go, and their picture is decoded from there. What
 * touches the disk besides the decoder, and the memory of the bytes, is the caller's.
 */
export interface StandIn {
  readonly path: string;
  /** Gives up the bytes, which nobody needs any more: asked once, before the first pixel comes. Must not throw. */
  readonly letGo: (bytes: Uint8Array) => Promise<void>;
  /** Asked after each look at the file. @throws BlankcheckError `cannot-read` where it does not hold the bytes any more */
  readonly refuseChanged: () => Promise<void>;
}

/** With the hexadecimal SHA-256 of the bytes, which is wanted where they cannot be decoded too. */
export interface HashedStandIn extends StandIn {
  readonly sha256: string;
}

/**
 * Bytes from here on are given up where a file stands in: beside their pixels they would be much of what a job needs. Own
 * choice: to give back so many takes a tenth of a second, to decode them takes more than one.
 */
export const STAND_IN_BYTES = 64 * 2 ** 20;
