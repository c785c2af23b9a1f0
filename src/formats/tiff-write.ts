import { channelsOf, type Raster } from '../raster/raster.ts';
import type { PrintReadyTags } from './png-write.ts';
import type { PrintRecord } from './print-record.ts';
import { writePrintRecordXmp } from './print-record-xmp.ts';
import { writeSrgbProfile } from './srgb-profile.ts';
import { replaceTiffDirectory, type TiffEntry } from './tiff-directory.ts';
import { readTiffTags } from './tiff-tags.ts';

/**
 * The TIFF of an 8-bit rgb raster, with or without (unassociated) alpha, or of opaque cmyk: losslessly deflated, its
 * profile (sRGB when left out), exact density, the program's record as XMP, no orientation. Same input, same bytes.
 * @see TIFF Revision 6.0 (1992); Adobe Photoshop TIFF Technical Notes (2002) for deflate
 */
export async function encodeTiff(
  raster: Raster,
  { ppi, densityPpi = { x: ppi, y: ppi }, record, profile = writeSrgbProfile() }: PrintReadyTags,
): Promise<Uint8Array> {
  const { default: sharp } = await import('sharp');
  const isCmyk = raster.model === 'cmyk' && !raster.hasAlpha;
  if ((raster.model !== 'rgb' && !isCmyk) || raster.depth !== 8)
    throw new Error('Expected an 8-bit rgb or opaque cmyk raster to write.');
  const tiff = await sharp(raster.data, {
    // Inks go as four plain samples: said to be CMYK, the library would want to convert them.
    raw: { width: raster.widthPx, height: raster.heightPx, channels: channelsOf(raster) as 3 | 4 },
    limitInputPixels: false, // the plan has kept the limit of print-ready pictures
  })
    .tiff({ compression: 'deflate', predictor: 'horizontal' })
    .toBuffer();
  const { littleEndian, directories } = readTiffTags(tiff)!;
  // Only what describes the picture is taken from the library: its own notes on density and orientation are not ours.
  const picture = [...directories[0]!]
    .filter(([tag]) => PICTURE_TAGS.has(tag) && !(isCmyk && (tag === PHOTOMETRIC || tag === EXTRA_SAMPLES)))
    .map(([tag, value]): TiffEntry => ({ tag, ...value }));
  if (isCmyk)
    picture.push({ tag: PHOTOMETRIC, type: SHORT, count: 1, bytes: short(SEPARATED, littleEndian) });
  return replaceTiffDirectory(tiff, littleEndian, [
    ...picture,
    ...ownEntries(densityPpi, record, profile, littleEndian),
  ]);
}

/**
 * Size, samples, compression, strips, layout; predictor, kind of alpha and of number.
 * @see TIFF Revision 6.0, sections 8, 14, 18 and 19
 */
const PICTURE_TAGS = new Set([256, 257, 258, 259, 262, 273, 277, 278, 279, 284, 317, 338, 339]);

const BYTE = 1;
const ASCII = 2;
const SHORT = 3;
const RATIONAL = 5;
const UNDEFINED = 7;
const INCH = 2;
const PHOTOMETRIC = 262;
const EXTRA_SAMPLES = 338;
/** Inks, which are CMYK where no InkSet says otherwise. @see TIFF Revision 6.0, section 16 */
const SEPARATED = 5;

/** XResolution, YResolution, ResolutionUnit, Software; XMP (ISO 16684-3); the profile (ICC.1:2022, annex B.4). */
function ownEntries(
  densityPpi: { readonly x: number; readonly y: number },
  record: PrintRecord,
  profile: Uint8Array,
  littleEndian: boolean,
): TiffEntry[] {
  const unit = short(INCH, littleEndian);
  const software = Buffer.from(`${record.program} ${record.version}\0`, 'latin1');
  const xmp = Buffer.from(writePrintRecordXmp(record), 'utf8');
  return [
    { tag: 282, type: RATIONAL, count: 1, bytes: rational(densityPpi.x, littleEndian) },
    { tag: 283, type: RATIONAL, count: 1, bytes: rational(densityPpi.y, littleEndian) },
    { tag: 296, type: SHORT, count: 1, bytes: unit },
    { tag: 305, type: ASCII, count: software.length, bytes: software },
    { tag: 700, type: BYTE, count: xmp.length, bytes: xmp },
    { tag: 34675, type: UNDEFINED, count: profile.length, bytes: profile },
  ];
}

function short(value: number, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(2);
  new DataView(bytes.buffer).setUint16(0, value, littleEndian);
  return bytes;
}

/** Exact for whole numbers and for up to six decimals, as far as 4294 pixels per inch. */
function rational(value: number, littleEndian: boolean): Uint8Array {
  const denominator = Number.isInteger(value) ? 1 : 1_000_000;
  const bytes = new Uint8Array(8);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, Math.round(value * denominator), littleEndian);
  view.setUint32(4, denominator, littleEndian);
  return bytes;
}
