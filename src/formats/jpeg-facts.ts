import { BlankcheckError } from '../blankcheck-error.ts';
import type { StatedPpi } from './artwork.ts';
import { type ContainerFacts, damagedFile, type StatedColour } from './container-facts.ts';
import { startsWith } from './other-formats.ts';

interface Segment {
  readonly marker: number;
  readonly data: Uint8Array;
}

/** A profile of 16 MB takes 250, metadata about as many; each costs an object. */
const MOST_SEGMENTS = 10_000;
const EOI = 0xd9;
const SOS = 0xda;
/** Start of frame, except the three codes in their range that mean something else (ITU-T T.81, table B.1). */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
/** RST0 to RST7, SOI, EOI and TEM stand alone, without a length. */
const standsAlone = (marker: number) => (marker >= 0xd0 && marker <= EOI) || marker === 0x01;

/**
 * Density and profile of a JPEG, after a walk to its end.
 * @throws `damaged` when a segment is cut off, or frame, scan or the EOI marker is missing;
 *   `unsupported-format` for a coding that no common program writes (lossless, arithmetic, 12-bit)
 * @see ITU-T T.81, annex B (markers); ITU-T T.871, 10.1 (JFIF density); ICC.1:2022, B.4 (profile in APP2)
 */
export function readJpegFacts(bytes: Uint8Array): ContainerFacts {
  const segments = readSegments(bytes);
  const frame = segments.find(({ marker }) => isFrame(marker));
  if (!frame || !segments.some(({ marker }) => marker === SOS))
    throw damagedFile('jpeg', 'it holds no picture data');
  if (frame.marker > 0xc2 || frame.data[0] !== 8)
    throw new BlankcheckError(
      'unsupported-format',
      'This JPEG has a rare coding (lossless, arithmetic or 12-bit) that is not read: save it as PNG.',
    );
  return { pages: 1, storedPpi: readJfif(segments), colour: readProfile(segments) };
}

function readSegments(bytes: Uint8Array): Segment[] {
  const segments: Segment[] = [];
  let at = 2;
  while (at < bytes.length) {
    at = bytes[at] === 0xff ? at : skipToMarker(bytes, at);
    while (bytes[at + 1] === 0xff) at++; // fill bytes may precede a marker (B.1.1.2)
    const marker = bytes[at + 1];
    if (marker === undefined) break;
    if (marker === EOI) return segments;
    at += 2;
    if (standsAlone(marker) || marker === 0) continue;
    const length = (bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0);
    if (length < 2 || at + length > bytes.length)
      throw damagedFile('jpeg', `the segment at byte ${at - 2} is cut off`);
    if (segments.length >= MOST_SEGMENTS)
      throw damagedFile('jpeg', `it has more than ${MOST_SEGMENTS} segments`);
    segments.push({ marker, data: bytes.subarray(at + 2, at + length) });
    at += length;
  }
  throw damagedFile('jpeg', 'it stops before its end marker');
}

/** Compressed data holds no FF but before 00 (a stuffed byte) or a restart marker: the next other one ends it. */
function skipToMarker(bytes: Uint8Array, from: number): number {
  const at = bytes.indexOf(0xff, from);
  return at < 0 ? bytes.length : at;
}

function readJfif(segments: readonly Segment[]): StatedPpi | null {
  const data = segments.find(
    (segment) => segment.marker === 0xe0 && startsWith(segment.data, 'JFIF\0'),
  )?.data;
  if (!data || data.length < 12) return null;
  const perInch = [0, 1, 2.54][data[7]!] ?? 0; // unit 0 states only the shape of a pixel
  const [x, y] = [data[8]! * 256 + data[9]!, data[10]! * 256 + data[11]!];
  return perInch > 0 && x > 0 && y > 0 ? { x: x * perInch, y: y * perInch } : null;
}

/** The profile comes in numbered parts, in any order. */
function readProfile(segments: readonly Segment[]): StatedColour {
  const parts = segments.filter(
    ({ marker, data }) => marker === 0xe2 && startsWith(data, 'ICC_PROFILE\0') && data.length >= 14,
  );
  if (parts.length === 0) return { kind: 'none' };
  const sorted = parts.map(({ data }) => data).sort((a, b) => a[12]! - b[12]!);
  if (!sorted.every((data, index) => data[12] === index + 1 && data[13] === sorted.length))
    return { kind: 'unusable', reason: 'parts of the profile are missing' };
  return { kind: 'icc', bytes: new Uint8Array(Buffer.concat(sorted.map((data) => data.subarray(14)))) };
}
