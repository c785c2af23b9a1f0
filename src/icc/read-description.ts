import { type ProfileBytes, readSignature } from './profile-bytes.ts';

/**
 * The text of a `desc` tag: a version 2 description, plain text, or a list of translations of which English is taken
 * before the first. Control characters become spaces. Empty when there is none or it cannot be read: a name is for
 * people and decides nothing.
 * @see ICC.1:2022, 10.15 multiLocalizedUnicodeType, 10.24 textType; ICC.1:2001-04, 6.5.17 textDescriptionType
 */
export function readDescription(bytes: ProfileBytes | undefined): string {
  if (!bytes || bytes.view.byteLength < 12) return '';
  const { view } = bytes;
  const type = readSignature(view, 0);
  if (type === 'text') return readAscii(view, 8, view.byteLength - 8);
  if (type === 'desc') return readAscii(view, 12, view.getUint32(8));
  if (type === 'mluc') return readTranslations(view);
  return '';
}

function readTranslations(view: DataView): string {
  if (view.byteLength < 16) return '';
  const recordBytes = view.getUint32(12);
  if (recordBytes < 12) return '';
  const count = Math.min(view.getUint32(8), Math.floor((view.byteLength - 16) / recordBytes));
  let chosen: number | null = null;
  for (let i = 0; i < count; i++) {
    const at = 16 + i * recordBytes;
    const english = view.getUint16(at) === 0x656e;
    if (chosen === null || english) chosen = at;
    if (english) break;
  }
  return chosen === null ? '' : readUtf16(view, view.getUint32(chosen + 8), view.getUint32(chosen + 4));
}

function readUtf16(view: DataView, offset: number, byteLength: number): string {
  const end = Math.min(offset + byteLength, view.byteLength);
  let text = '';
  for (let i = offset; i + 1 < end; i += 2) text += String.fromCharCode(view.getUint16(i));
  return tidy(text);
}

function readAscii(view: DataView, offset: number, byteLength: number): string {
  const end = Math.min(offset + byteLength, view.byteLength);
  let text = '';
  for (let i = offset; i < end; i++) text += String.fromCharCode(view.getUint8(i));
  return tidy(text);
}

/** Up to the first zero, without control characters and lone surrogates; a text of some kilobytes is not a name. */
function tidy(text: string): string {
  const [first = ''] = text.split('\0', 1);
  return first
    .slice(0, 1000)
    .replace(/[\p{Cc}\p{Cs}]+/gu, ' ')
    .trim();
}
