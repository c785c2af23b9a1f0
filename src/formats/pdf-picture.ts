import { channelsOf, createRaster, type Raster } from '../raster/raster.ts';
import type { PdfObjects, PdfReference } from './pdf-objects.ts';
import { readPngChunks } from './png-chunks.ts';

/**
 * Stores an 8-bit rgb or cmyk raster as an image, losslessly; alpha as a soft mask of its own. Packed in a thread of its own.
 * @see ISO 32000-1:2008, 8.9.5 (image dictionaries), 11.6.5.3 (soft masks: samples of straight, not premultiplied, alpha)
 */
export async function addPdfPicture(
  objects: PdfObjects,
  raster: Raster,
  colourSpace: PdfReference,
): Promise<PdfReference> {
  if (raster.model === 'gray' || raster.depth !== 8)
    throw new Error('Expected an 8-bit rgb or cmyk raster to write.');
  if (!raster.hasAlpha) return addSamples(objects, raster, { ColorSpace: colourSpace });
  const { colour, alpha } = splitAlpha(raster);
  const mask = await addSamples(objects, alpha, { ColorSpace: '/DeviceGray' });
  return addSamples(objects, colour, { ColorSpace: colourSpace, SMask: mask });
}

/** Colour type of a PNG by its samples per pixel. @see ISO/IEC 15948:2004, 11.2.2 */
const PNG_KINDS = { 1: 0, 3: 2, 4: 6 } as const;

/** A PNG's picture data is what PDF calls Flate with PNG predictors, so the PNG encoder's speed and size are those of the PDF. */
async function addSamples(
  objects: PdfObjects,
  raster: Raster,
  entries: Readonly<Record<string, string>>,
): Promise<PdfReference> {
  const { default: sharp } = await import('sharp');
  const { widthPx, heightPx, data } = raster;
  const channels = channelsOf(raster) as 1 | 3 | 4;
  const packer = sharp(data, {
    // Inks go as four plain samples: a packer need not know what they mean.
    raw: { width: widthPx, height: heightPx, channels },
    limitInputPixels: false, // the plan has kept the limit of print-ready pictures
  }).png({ compressionLevel: 6, adaptiveFiltering: false });
  // Left to itself the library makes three samples of one.
  const png = await (channels === 1 ? packer.toColourspace('b-w') : packer).toBuffer();
  const chunks = readPngChunks(png);
  const [depth, kind] = chunks[0]!.data.subarray(8, 10);
  if (depth !== 8 || kind !== PNG_KINDS[channels]) throw new Error(`Expected ${channels} samples of 8 bits.`);
  const packed = chunks.flatMap((chunk) => (chunk.type === 'IDAT' ? [chunk.data] : []));
  return objects.addStream(
    {
      Type: '/XObject',
      Subtype: '/Image',
      Width: widthPx,
      Height: heightPx,
      BitsPerComponent: 8,
      ...entries,
      Filter: '/FlateDecode',
      DecodeParms: { Predictor: 15, Colors: channels, BitsPerComponent: 8, Columns: widthPx },
    },
    ...packed,
  );
}

function splitAlpha(raster: Raster): { readonly colour: Raster; readonly alpha: Raster } {
  const channels = channelsOf(raster);
  const colour = createRaster({ ...raster, hasAlpha: false });
  const alpha = createRaster({ ...raster, model: 'gray', hasAlpha: false });
  for (let pixel = 0; pixel < alpha.data.length; pixel++) {
    const from = pixel * channels;
    for (let sample = 0; sample < channels - 1; sample++)
      colour.data[pixel * (channels - 1) + sample] = raster.data[from + sample]!;
    alpha.data[pixel] = raster.data[from + channels - 1]!;
  }
  return { colour, alpha };
}
