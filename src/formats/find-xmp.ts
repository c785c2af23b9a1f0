import { inflateSync } from 'node:zlib';
import { PNG_SIGNATURE } from './png-chunks.ts';

/** XMP stands near one end of a file: this much of both ends is looked at where the format is not known to hide it. */
const WINDOW_BYTES = 1 << 20;
/** Longest text that is read, unpacked. */
const MOST_XMP_BYTES = 1 << 20;
/** A PNG holds one packet; more than a few compressed ones are there to cost time. */
const MOST_PACKED_CHUNKS = 8;

/**
 * XMP texts in a file that mention a namespace, from `<x:xmpmeta` or `<rdf:RDF` to its end tag. Bounded: looks at
 * a PNG's text chunks, compressed ones too, and at 1 MiB at both ends of anything else. Never throws.
 * @see ISO 16684-1:2019, 7.3; ISO 16684-3 (where file formats keep XMP)
 */
export function findXmp(bytes: Uint8Array, namespace: string): string[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const places = PNG_SIGNATURE.every((byte, index) => bytes[index] === byte)
    ? findPngTexts(buffer)
    : [buffer.subarray(0, WINDOW_BYTES), buffer.subarray(-WINDOW_BYTES)];
  return places.flatMap((place) => cutPacket(place, namespace) ?? []);
}

function cutPacket(place: Buffer, namespace: string): string | null {
  const mention = place.indexOf(namespace);
  if (mention < 0) return null;
  for (const name of ['x:xmpmeta', 'rdf:RDF']) {
    const start = place.lastIndexOf(`<${name}`, mention);
    const end = place.indexOf(`</${name}>`, mention);
    if (start >= 0 && end >= 0 && end - start <= MOST_XMP_BYTES)
      return place.toString('utf8', start, end + name.length + 3);
  }
  return null;
}

/**
 * The texts under XMP's keyword. Programs that know XMP write iTXt; others that keep it as a comment write tEXt or
 * zTXt, or a profile in hexadecimal. Walks the chunks by their lengths alone: whether the picture is whole is the
 * reader's to say.
 * @see ISO/IEC 15948:2004, 11.3.4.3 to 11.3.4.5
 */
function findPngTexts(png: Buffer): Buffer[] {
  const texts: Buffer[] = [];
  let packed = 0;
  let at = PNG_SIGNATURE.length;
  while (at + 12 <= png.length) {
    const length = png.readUInt32BE(at);
    const type = png.toString('latin1', at + 4, at + 8);
    const data = png.subarray(at + 8, at + 8 + length);
    at += 12 + length;
    const keyword =
      TEXT_CHUNKS.has(type) && KEYWORDS.find((known) => data.subarray(0, known.length).equals(known));
    if (!keyword) continue;
    const content = readText(type, data.subarray(keyword.length));
    if (content?.packed && ++packed > MOST_PACKED_CHUNKS) break;
    const text = content?.packed ? unpack(content.text) : content?.text;
    if (text) texts.push(keyword === RAW_PROFILE ? readRawProfile(text) : text);
  }
  return texts;
}

const TEXT_CHUNKS = new Set(['tEXt', 'zTXt', 'iTXt']);
const RAW_PROFILE = Buffer.from('Raw profile type xmp\0', 'latin1');
const KEYWORDS = [Buffer.from('XML:com.adobe.xmp\0', 'latin1'), RAW_PROFILE];

/** What follows the keyword: iTXt has flag, method, language and translated keyword; zTXt a method; tEXt nothing. */
function readText(type: string, data: Buffer): { text: Buffer; packed: boolean } | null {
  if (type === 'tEXt') return { text: data, packed: false };
  if (type === 'zTXt') return { text: data.subarray(1), packed: true };
  const language = data.indexOf(0, 2);
  const translated = data.indexOf(0, language + 1);
  if (language < 0 || translated < 0) return null;
  return { text: data.subarray(translated + 1), packed: data[0] === 1 };
}

function unpack(packed: Buffer): Buffer | null {
  try {
    return inflateSync(packed, { maxOutputLength: MOST_XMP_BYTES });
  } catch {
    return null;
  }
}

/** An empty line, the profile's name, its length, then lines of hexadecimal digits: as ImageMagick writes profiles. */
function readRawProfile(text: Buffer): Buffer {
  const lines = text.toString('latin1', 0, MOST_XMP_BYTES).split('\n');
  return Buffer.from(lines.slice(3).join(''), 'hex');
}
