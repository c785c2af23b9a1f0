import { type ProfileErrorCode, profileError } from './profile-error.ts';

/** A stretch of a profile, the whole of it or one tag, with the name that errors give it. */
export interface ProfileBytes {
  readonly where: string;
  readonly view: DataView;
}

/** Throws unless `length` bytes are there from `offset` on. @throws profile-malformed, or the code given */
export function requireBytes(
  { where, view }: ProfileBytes,
  offset: number,
  length: number,
  what: string,
  code: ProfileErrorCode = 'profile-malformed',
): void {
  if (offset + length <= view.byteLength) return;
  throw profileError(
    code,
    where,
    `expected ${length} bytes of ${what} from byte ${offset} on, received ${view.byteLength} bytes in all`,
  );
}

/** Four characters, bytes outside printable ASCII as `?`, trailing spaces kept. */
export function readSignature(view: DataView, offset: number): string {
  let text = '';
  for (let i = offset; i < offset + 4; i++) {
    const byte = view.getUint8(i);
    text += byte >= 0x20 && byte < 0x7f ? String.fromCharCode(byte) : '?';
  }
  return text;
}

/** @see ICC.1:2022, 4.6 s15Fixed16Number */
export function readFixed(view: DataView, offset: number): number {
  return view.getInt32(offset) / 65536;
}

/** `count` 16-bit numbers; 8-bit ones are widened so that 255 becomes 65535. The caller has checked the length. */
export function readSamples(view: DataView, offset: number, count: number, bytes: 1 | 2): Uint16Array {
  const samples = new Uint16Array(count);
  if (bytes === 1) for (let i = 0; i < count; i++) samples[i] = view.getUint8(offset + i) * 257;
  else for (let i = 0; i < count; i++) samples[i] = view.getUint16(offset + 2 * i);
  return samples;
}

/** The part from `offset` on, under the same name. */
export function bytesFrom({ where, view }: ProfileBytes, offset: number): ProfileBytes {
  return { where, view: new DataView(view.buffer, view.byteOffset + offset, view.byteLength - offset) };
}
