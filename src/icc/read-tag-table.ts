import { type ProfileBytes, readSignature, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';
import { HEADER_BYTES } from './read-header.ts';

const ENTRY_BYTES = 12;

/** The bytes of each tag by its signature; tags may share all their bytes, and then share the object. */
export type TagTable = ReadonlyMap<string, ProfileBytes>;

interface Entry {
  readonly signature: string;
  readonly offset: number;
  readonly length: number;
}

/**
 * The tags of a profile, each checked to lie within the profile, behind the table and clear of the other tags.
 * @throws profile-malformed @see ICC.1:2022, 7.3
 */
export function readTagTable(profile: ProfileBytes): TagTable {
  const { view } = profile;
  requireBytes(profile, HEADER_BYTES, 4, 'a tag count');
  const count = view.getUint32(HEADER_BYTES);
  const start = HEADER_BYTES + 4;
  requireBytes(profile, start, count * ENTRY_BYTES, `a table of ${count} tags`);
  const entries = Array.from({ length: count }, (_, i): Entry => {
    const at = start + i * ENTRY_BYTES;
    return {
      signature: readSignature(view, at),
      offset: view.getUint32(at + 4),
      length: view.getUint32(at + 8),
    };
  });
  const dataStart = start + count * ENTRY_BYTES;
  for (const entry of entries) checkPlace(entry, dataStart, view.byteLength);
  checkOverlaps(entries);

  const shared = new Map<number, ProfileBytes>();
  const tags = new Map<string, ProfileBytes>();
  for (const { signature, offset, length } of entries) {
    if (tags.has(signature))
      throw profileError('profile-malformed', `tag ${signature}`, 'expected it once, received it twice');
    const bytes = shared.get(offset) ?? {
      where: `tag ${signature}`,
      view: new DataView(view.buffer, view.byteOffset + offset, length),
    };
    shared.set(offset, bytes);
    tags.set(signature, bytes);
  }
  return tags;
}

function checkPlace({ signature, offset, length }: Entry, dataStart: number, byteLength: number): void {
  if (offset < dataStart || offset + length > byteLength || length < 8)
    throw profileError(
      'profile-malformed',
      `tag ${signature}`,
      `expected 8 or more bytes between byte ${dataStart} and ${byteLength}, received ${length} bytes at ${offset}`,
    );
}

function checkOverlaps(entries: readonly Entry[]): void {
  const sorted = [...entries].sort((one, other) => one.offset - other.offset || one.length - other.length);
  for (const [i, entry] of sorted.entries()) {
    const before = sorted[i - 1];
    if (!before || before.offset + before.length <= entry.offset) continue;
    if (before.offset === entry.offset && before.length === entry.length) continue;
    throw profileError(
      'profile-malformed',
      `tag ${entry.signature}`,
      `expected bytes of its own, received some of tag ${before.signature}`,
    );
  }
}
