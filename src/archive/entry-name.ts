import type { Entry } from 'yauzl';

/** Names that mean a device on some system, whatever follows the first dot. @see Win32 "Naming Files, Paths, and Namespaces" */
const DEVICE_NAMES = /^(?:con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])$/i;
const CONTROLS = /\p{Cc}/u;
const HOST_UNIX = 3;
const HOST_DARWIN = 19;
const UTF8_FLAG = 0x800;

/**
 * The name that an entry's own bytes spell, with `/` between folders. Without the flag for UTF-8 a name is CP437
 * (APPNOTE.TXT appendix D), but Unix and macOS packers write UTF-8 there too: from those, bytes that are well-formed
 * UTF-8 are taken as such.
 */
export function decodeEntryName(
  entry: Pick<Entry, 'fileNameRaw' | 'generalPurposeBitFlag' | 'versionMadeBy' | 'extraFields'>,
  decodeByRule: (flags: number, raw: Buffer, extraFields: Entry['extraFields'], strict: boolean) => string,
): string {
  const host = entry.versionMadeBy >> 8;
  const silentUtf8 = (host === HOST_UNIX || host === HOST_DARWIN) && isUtf8(entry.fileNameRaw);
  const flags = silentUtf8 ? entry.generalPurposeBitFlag | UTF8_FLAG : entry.generalPurposeBitFlag;
  return decodeByRule(flags, entry.fileNameRaw, entry.extraFields, false);
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** Why a name is dangerous on some system, as the end of "its name …"; null for a plain one. Folders end with `/`. */
export function findNameFault(name: string): string | null {
  const segments = name.replace(/\/$/, '').split('/');
  const last = segments.at(-1) ?? '';
  if (last === '') return 'is empty';
  if (CONTROLS.test(name)) return 'holds control characters';
  if (name.startsWith('/') || /^[a-z]:/i.test(name)) return 'is an absolute path';
  if (segments.includes('..')) return 'leads out of the archive';
  if (DEVICE_NAMES.test((last.split('.')[0] ?? '').trimEnd())) return 'means a device on Windows';
  if (/[. ]$/.test(last)) return 'ends with a dot or a space, which Windows drops';
  return null;
}

/** What packers and file managers add beside the files: resource forks, hidden files, their folders. */
export function isSidecarName(name: string): boolean {
  return name.split('/').some((segment) => segment === '__MACOSX' || segment.startsWith('.'));
}
