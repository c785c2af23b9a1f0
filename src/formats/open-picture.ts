import type { Sharp, SharpOptions } from 'sharp';
import { BlankcheckError } from '../blankcheck-error.ts';
import type { ColourModel } from '../raster/raster.ts';
import type { ArtworkFormat } from './artwork.ts';
import { damagedFile, FORMAT_NAMES } from './container-facts.ts';
import type { Limits } from './limits.ts';
import { libraryTimeout, tooSlowError } from './within-seconds.ts';

/** A picture whose header was read and found within the limits; no pixel is decoded yet. */
export interface OpenPicture {
  readonly format: Exclude<ArtworkFormat, 'svg'>;
  readonly model: ColourModel;
  readonly hasAlpha: boolean;
  readonly depth: 8 | 16;
  /** Bits that the file gives a sample, where the decoder tells; AVIF has 8, 10 or 12. */
  readonly storedBits: number;
  /** 1…8; 1 when the file says nothing. */
  readonly orientation: number;
  readonly exif: Uint8Array | undefined;
  /** A pipeline over the file that leaves device samples as they are: the library never converts colour. */
  readonly pipeline: () => Sharp;
}

/** Samples of colour by the decoder's name of the space. */
const MODELS: Readonly<Record<string, ColourModel>> = {
  'b-w': 'gray',
  grey16: 'gray',
  srgb: 'rgb',
  rgb16: 'rgb',
  cmyk: 'cmyk',
};
const COLOUR_SAMPLES: Readonly<Record<ColourModel, number>> = { gray: 1, rgb: 3, cmyk: 4 };
const DEPTHS: Readonly<Record<string, 8 | 16>> = { uchar: 8, ushort: 16 };

/**
 * Opens the picture, its bytes or the path of its file, with the decoder and holds its size against the limits. Of a path,
 * the library's memory of what it read before is switched off for this process: a changed file had its old pixels.
 * @throws `too-many-pixels`, `unsupported-format` (samples or channels that are no gray, RGB or CMYK), `damaged`
 */
export async function openPicture(
  format: OpenPicture['format'],
  source: Uint8Array | string,
  limits: Limits,
): Promise<OpenPicture> {
  const { default: sharp } = await import('sharp');
  if (typeof source === 'string') sharp.cache(false);
  const options: SharpOptions = { failOn: 'warning', limitInputPixels: limits.maxPixels, pages: 1 };
  const pipeline: OpenPicture['pipeline'] = () =>
    sharp(source, { ...options, ignoreIcc: true })
      .autoOrient()
      .timeout(libraryTimeout(limits.maxSeconds));
  const header = await pipeline()
    .metadata()
    .catch((error: unknown) => Promise.reject(decodeError(format, error, limits)));
  // The bytes decided on a loader; should the library have chosen another one, it is not on our list.
  if (header.mediaType !== `image/${format}`) throw damagedFile(format, 'its contents are of another kind');
  const model = MODELS[header.space];
  const depth = DEPTHS[header.depth];
  const extra = header.channels - (model ? COLOUR_SAMPLES[model] : 0);
  if (!model || !depth || extra < 0 || extra > 1)
    throw new BlankcheckError(
      'unsupported-format',
      `This ${FORMAT_NAMES[format]} has ${header.channels} channels of "${header.depth}" samples in the space "${header.space}", which is not read: save it as 8- or 16-bit RGB.`,
    );
  const { orientation = 1, exif, bitsPerSample = depth } = header;
  return {
    format,
    model,
    hasAlpha: extra === 1,
    depth,
    storedBits: bitsPerSample,
    orientation,
    exif,
    pipeline,
  };
}

/** `150 million pixels`, and few of them as a plain number. */
function tellPixels(pixels: number): string {
  return pixels < 1e6 ? `${pixels} pixels` : `${Math.round(pixels / 1e4) / 100} million pixels`;
}

/** What the imaging package puts before the decoder's words, which may be none. */
const OWN_LAYER = /^Input buffer has corrupt header:\s*/;

/** The decoder's error in our terms; its own words stay as the cause. */
export function decodeError(format: ArtworkFormat, cause: unknown, limits: Limits): BlankcheckError {
  const words = cause instanceof Error ? cause.message : String(cause);
  const [said = ''] = words.replace(OWN_LAYER, '').split('\n');
  if (/exceeds pixel limit/i.test(words))
    return new BlankcheckError(
      'too-many-pixels',
      `The artwork has more than ${tellPixels(limits.maxPixels)}. Scale it down, or raise the limit maxPixels (--limit maxPixels=…).`,
      { cause },
    );
  if (/timeout/i.test(words)) return tooSlowError(limits.maxSeconds, { cause });
  // The decoders' own phrases for codings that they were built without.
  if (/not configured|not implemented|channel limit/i.test(words))
    return new BlankcheckError(
      'unsupported-format',
      `This ${FORMAT_NAMES[format]} is coded in a way that is not read (${said}): save it as PNG.`,
      { cause },
    );
  return damagedFile(format, `its picture cannot be decoded${said ? ` (${said})` : ''}`, { cause });
}
