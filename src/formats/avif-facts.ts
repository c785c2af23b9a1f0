import { readColourCodes } from './coded-colour.ts';
import { type ContainerFacts, damagedFile, type StatedColour } from './container-facts.ts';
import { findIsoBoxes, type IsoBox, readIsoBoxes } from './iso-boxes.ts';
import { startsWith } from './other-formats.ts';

/**
 * Profile and frame count of an AVIF, whose density stands in its EXIF item only.
 * @throws `damaged` when one of the boxes that hold the picture is cut off or missing
 * @see AV1 Image File Format 1.1; ISO/IEC 23008-12 (HEIF), 6.5.5 (colour); ISO/IEC 14496-12, 8.7.3 (samples)
 */
export function readAvifFacts(bytes: Uint8Array): ContainerFacts {
  const { boxes, brokenType } = readIsoBoxes(bytes);
  // What is no box of a picture is junk after the end, which decoders pass over.
  if (brokenType !== null && ['ftyp', 'meta', 'mdat', 'moov'].includes(brokenType))
    throw damagedFile('avif', `its ${brokenType} box is cut off`);
  const [meta] = boxes.filter(({ type }) => type === 'meta');
  if (!meta) throw damagedFile('avif', 'its meta box is not there');
  if (!boxes.some(({ type }) => type === 'mdat') && findIsoBoxes(boxes, ['meta', 'idat']).length === 0)
    throw damagedFile('avif', 'it holds no picture data');
  return { pages: countFrames(boxes), storedPpi: null, colour: readColour(boxes) };
}

/** Samples of the longest track of a sequence; a still picture has no tracks. */
function countFrames(boxes: readonly IsoBox[]): number {
  const sizes = findIsoBoxes(boxes, ['moov', 'trak', 'mdia', 'minf', 'stbl', 'stsz']);
  return sizes.reduce(
    (most, { data }) => (data.length < 12 ? most : Math.max(most, viewOf(data).getUint32(8))),
    1,
  );
}

/** A profile wins over colour codes, which many writers add beside it. */
function readColour(boxes: readonly IsoBox[]): StatedColour {
  const colours = findIsoBoxes(boxes, ['meta', 'iprp', 'ipco', 'colr']).map(({ data }) => data);
  const profile = colours.find((data) => startsWith(data, 'prof') || startsWith(data, 'rICC'));
  if (profile) return { kind: 'icc', bytes: profile.subarray(4) };
  const codes = colours.find((data) => startsWith(data, 'nclx') && data.length >= 10);
  return codes ? readColourCodes(viewOf(codes).getUint16(4), viewOf(codes).getUint16(6)) : { kind: 'none' };
}

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
