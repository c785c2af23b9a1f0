import { type ContainerFacts, damagedFile } from './container-facts.ts';

const EXTENSION = 0x21;
const IMAGE = 0x2c;
const TRAILER = 0x3b;

/**
 * Frame count of a GIF, which states neither density nor colours.
 * @throws `damaged` when a block is cut off, the trailer is missing, or no picture is in it
 * @see GIF89a specification (1990), sections 15 to 27
 */
export function readGifFacts(bytes: Uint8Array): ContainerFacts {
  let at = 13 + colourTableBytes(bytes[10]);
  let pages = 0;
  while (at < bytes.length && bytes[at] !== TRAILER) {
    if (bytes[at] === EXTENSION) at = skipSubBlocks(bytes, at + 2);
    else if (bytes[at] === IMAGE) {
      at = skipSubBlocks(bytes, at + 11 + colourTableBytes(bytes[at + 9])); // descriptor, table, code size
      pages++;
    } else throw damagedFile('gif', `byte ${at} begins no block`);
  }
  if (at >= bytes.length) throw damagedFile('gif', 'it stops before its trailer');
  if (pages === 0) throw damagedFile('gif', 'it holds no picture');
  return { pages, storedPpi: null, colour: { kind: 'none' } };
}

/** Bit 7 says whether a colour table follows, bits 0 to 2 how long it is. */
function colourTableBytes(packed = 0): number {
  return packed & 0x80 ? 3 << ((packed & 7) + 1) : 0;
}

/** Sub-blocks begin with their length; one of length 0 ends them. */
function skipSubBlocks(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== 0) at += 1 + bytes[at]!;
  return at + 1;
}
