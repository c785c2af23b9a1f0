import { BlankcheckError } from '../blankcheck-error.ts';
import type { StatedPpi } from './artwork.ts';
import { type ContainerFacts, damagedFile, type StatedColour } from './container-facts.ts';
import { readTagNumbers, readTiffTags, type TiffDirectory } from './tiff-tags.ts';

/** Tag numbers of TIFF 6.0, section 8 and appendix A; the profile's is that of ICC.1, annex B. */
const TAG = {
  newSubfileType: 254,
  bitsPerSample: 258,
  photometric: 262,
  stripOffsets: 273,
  stripByteCounts: 279,
  xResolution: 282,
  yResolution: 283,
  resolutionUnit: 296,
  tileOffsets: 324,
  tileByteCounts: 325,
  sampleFormat: 339,
  iccProfile: 34675,
} as const;

/**
 * Density, profile and page count of a TIFF, whose every strip and tile must lie within the file.
 * @throws `damaged` when a directory, a value, a strip or a tile is not there;
 *   `unsupported-format` for samples that are no plain 1 to 16 bits (floating point, signed, 32-bit) and for Lab
 */
export function readTiffFacts(bytes: Uint8Array): ContainerFacts {
  const tags = readTiffTags(bytes);
  const [first] = tags?.directories ?? [];
  if (!tags || !first) throw damagedFile('tiff', 'its directory is not there');
  refuseRareSamples(first);
  if (!tags.complete) throw damagedFile('tiff', 'a directory or value is cut off');
  for (const directory of tags.directories) requirePixels(directory, bytes.length);
  return {
    pages: tags.directories.filter(isPage).length || 1,
    storedPpi: readResolution(first),
    colour: readProfile(first),
  };
}

/**
 * Density by the tags that TIFF and EXIF share: x, y and unit 2 (inch, also when the unit is left out) or
 * 3 (centimetre). Null when it states none, or only the shape of a pixel (unit 1).
 */
export function readResolution(directory: TiffDirectory): StatedPpi | null {
  const [x = 0] = readTagNumbers(directory.get(TAG.xResolution));
  const [y = 0] = readTagNumbers(directory.get(TAG.yResolution));
  const [unit = 2] = readTagNumbers(directory.get(TAG.resolutionUnit));
  const perInch = unit === 2 ? 1 : unit === 3 ? 2.54 : 0;
  const usable = (value: number) => Number.isFinite(value) && value > 0;
  return perInch > 0 && usable(x) && usable(y) ? { x: x * perInch, y: y * perInch } : null;
}

/** Reduced copies (bit 0) and transparency masks (bit 2) belong to a page and are none themselves. */
function isPage(directory: TiffDirectory): boolean {
  const [kind = 0] = readTagNumbers(directory.get(TAG.newSubfileType));
  return (kind & 0b101) === 0;
}

function requirePixels(directory: TiffDirectory, fileBytes: number): void {
  const offsets = readTagNumbers(directory.get(TAG.stripOffsets) ?? directory.get(TAG.tileOffsets));
  const counts = readTagNumbers(directory.get(TAG.stripByteCounts) ?? directory.get(TAG.tileByteCounts));
  if (offsets.length === 0) throw damagedFile('tiff', 'it holds no picture data');
  // Byte counts may be left out where there is one strip: then its beginning at least must be there.
  if (offsets.some((offset, index) => offset + (counts[index] ?? 1) > fileBytes))
    throw damagedFile('tiff', 'its picture data is cut off');
}

function refuseRareSamples(directory: TiffDirectory): void {
  const formats = readTagNumbers(directory.get(TAG.sampleFormat));
  const bits = readTagNumbers(directory.get(TAG.bitsPerSample));
  const [photometric = 1] = readTagNumbers(directory.get(TAG.photometric));
  const rare =
    formats.some((format) => format !== 1 && format !== 4) || bits.some((count) => count > 16)
      ? 'floating-point, signed or 32-bit samples'
      : photometric >= 8
        ? 'Lab or raw camera colours'
        : null;
  if (rare !== null)
    throw new BlankcheckError(
      'unsupported-format',
      `This TIFF has ${rare}, which are not read: save it as 8- or 16-bit RGB.`,
    );
}

function readProfile(directory: TiffDirectory): StatedColour {
  const profile = directory.get(TAG.iccProfile);
  return profile ? { kind: 'icc', bytes: profile.bytes } : { kind: 'none' };
}
