import { createHash } from 'node:crypto';

/** Characters that Windows, macOS or Linux forbid in a file name, and control characters, which some show and some obey. */
const FORBIDDEN = /[<>:"/\\|?*\p{Cc}\p{Zl}\p{Zp}\p{Cs}]/gu;
const DEVICE_NAMES = /^(?:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])$/i;
/** ext4, APFS and NTFS hold 255; some encrypting and network file systems 143. */
const LONGEST_BYTES = 143;
const HASH_DIGITS = 8;

/**
 * A file name that every system takes: `<art>.<rest>` with forbidden characters as `_`, no hidden or device name,
 * and where it is over-long the art's part cut at a whole character and told apart by a hash of what was cut.
 */
export function portableName(art: string, rest: string): string {
  const end = `.${clean(rest)}`;
  const start = clean(art)
    .replace(/^[. ]/, '_')
    .replace(/^[^.]*?(?=\s*(?:\.|$))/, (stem) => (DEVICE_NAMES.test(stem) ? `${stem}_` : stem));
  if (Buffer.byteLength(start + end) <= LONGEST_BYTES) return start + end;
  const mark = `~${shortHash(art)}`;
  return cutTo(start, LONGEST_BYTES - Buffer.byteLength(mark + end)) + mark + end;
}

/** The first digits of a SHA-256, enough to tell the files of a run apart. */
export function shortHash(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, HASH_DIGITS);
}

function clean(text: string): string {
  return text.replace(FORBIDDEN, '_');
}

function cutTo(text: string, bytes: number): string {
  let kept = '';
  let used = 0;
  for (const character of text) {
    used += Buffer.byteLength(character);
    if (used > bytes) break;
    kept += character;
  }
  return kept;
}
