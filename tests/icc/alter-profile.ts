import { wholeNumbers } from '../../fixtures/byte-writers/write-icc.ts';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { readProfile } from '../../src/icc/read-profile.ts';

/** The code of the refusal, or null when the profile is read. Anything but a refusal of ours fails the test. */
export function refusalOf(bytes: Uint8Array): string | null {
  try {
    readProfile(bytes);
    return null;
  } catch (error) {
    if (!(error instanceof BlankcheckError) || error.kind !== 'profile') throw error;
    return error.code;
  }
}

/** A copy with whole numbers written into it at an offset. */
export function altered(
  bytes: Uint8Array,
  offset: number,
  numbers: readonly number[],
  size: 1 | 2 | 4 = 4,
): Uint8Array {
  const copy = bytes.slice();
  copy.set(wholeNumbers(numbers, size), offset);
  return copy;
}

/** Where the entry of a tag stands in the tag table. */
export function entryOf(bytes: Uint8Array, name: string): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  for (let at = 132; at < 132 + 12 * view.getUint32(128); at += 12)
    if (String.fromCharCode(...bytes.subarray(at, at + 4)) === name) return at;
  throw new Error(`no tag ${name}`);
}

/** Where its bytes begin. */
export function tagOffset(bytes: Uint8Array, name: string): number {
  return new DataView(bytes.buffer, bytes.byteOffset).getUint32(entryOf(bytes, name) + 4);
}
