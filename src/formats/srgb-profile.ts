import { XYZ_D50 } from '../colour/lab.ts';
import { transpose } from '../colour/matrix3.ts';
import { decodeSrgb, SRGB_TO_XYZ_D50 } from '../colour/srgb.ts';
import type { Triple } from '../colour/triple.ts';

/**
 * The bytes of an ICC profile of sRGB, about 1 kB, made from the constants of IEC 61966-2-1. Version 2.4 and not 4,
 * because drivers and print programs exist that pass over version 4; nothing of it is needed here.
 * @see ICC.1:2001-04 (profile version 2.4), 6.1 (header), 6.3.1.1 (display profiles), 6.4, 6.5
 */
export function writeSrgbProfile(): Uint8Array {
  const [red, green, blue] = transpose(SRGB_TO_XYZ_D50);
  const curve = curveTag();
  return assemble([
    ['desc', descriptionTag('sRGB IEC61966-2.1')],
    ['cprt', textTag('No copyright, use freely')],
    ['wtpt', xyzTag(XYZ_D50)],
    ['rXYZ', xyzTag(red)],
    ['gXYZ', xyzTag(green)],
    ['bXYZ', xyzTag(blue)],
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ]);
}

type Tag = readonly [signature: string, data: Uint8Array];

const HEADER_BYTES = 128;

/** Header, table of tags, tags on multiples of four; tags that share their data share its place. */
function assemble(tags: readonly Tag[]): Uint8Array {
  const places = new Map<Uint8Array, number>();
  let end = HEADER_BYTES + 4 + tags.length * 12;
  for (const [, data] of tags) {
    if (places.has(data)) continue;
    places.set(data, end);
    end += Math.ceil(data.length / 4) * 4;
  }
  const profile = Buffer.alloc(end);
  writeHeader(profile);
  profile.writeUInt32BE(tags.length, HEADER_BYTES);
  tags.forEach(([signature, data], index) => {
    const entry = HEADER_BYTES + 4 + index * 12;
    const place = places.get(data)!;
    profile.write(signature, entry, 'latin1');
    profile.writeUInt32BE(place, entry + 4);
    profile.writeUInt32BE(data.length, entry + 8);
    profile.set(data, place);
  });
  return profile;
}

/** Fields that are not written are 0, which means unknown or none. */
function writeHeader(profile: Buffer): void {
  profile.writeUInt32BE(profile.length, 0);
  profile.writeUInt32BE(0x02400000, 8);
  profile.write('mntrRGB XYZ ', 12, 'latin1');
  // The day IEC 61966-2-1 came out: a profile must have a date, and the same input must give the same bytes.
  [1999, 10, 18].forEach((part, index) => {
    profile.writeUInt16BE(part, 24 + index * 2);
  });
  profile.write('acsp', 36, 'latin1');
  writeFixed(profile, 68, XYZ_D50);
}

/** One entry for each 8-bit sample; between two the line is off by less than 1e-5 of full light. */
function curveTag(): Uint8Array {
  const tag = Buffer.alloc(12 + 256 * 2);
  tag.write('curv', 'latin1');
  tag.writeUInt32BE(256, 8);
  for (let sample = 0; sample < 256; sample++)
    tag.writeUInt16BE(Math.round(decodeSrgb(sample / 255) * 65535), 12 + sample * 2);
  return tag;
}

function xyzTag(xyz: Triple): Uint8Array {
  const tag = Buffer.alloc(8 + 12);
  tag.write('XYZ ', 'latin1');
  writeFixed(tag, 8, xyz);
  return tag;
}

function textTag(text: string): Uint8Array {
  return Buffer.from(`text\0\0\0\0${text}\0`, 'latin1');
}

/** Counted ASCII, then empty Unicode and script texts: 4 + 4 + 2 + 1 + 67 bytes of 0. @see ICC.1:2001-04, 6.5.17 */
function descriptionTag(text: string): Uint8Array {
  const tag = Buffer.alloc(12 + text.length + 1 + 78);
  tag.write('desc', 'latin1');
  tag.writeUInt32BE(text.length + 1, 8);
  tag.write(text, 12, 'latin1');
  return tag;
}

/** s15Fixed16 numbers. @see ICC.1:2001-04, 5.3.4 */
function writeFixed(bytes: Buffer, at: number, values: Triple): void {
  for (const [index, value] of values.entries())
    bytes.writeInt32BE(Math.round(value * 65536), at + index * 4);
}
