import type { PrintReadyTags } from '../../src/formats/png-write.ts';
import type { PrintRecord } from '../../src/formats/print-record.ts';
import { hashPixels } from '../../src/formats/print-record.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { seededNumbers } from '../pictures.ts';

/** A picture with smooth parts, hard edges, every alpha and every byte: nothing about it compresses away by chance. */
export function printReadyRaster(hasAlpha: boolean, widthPx = 67, heightPx = 41): Raster {
  const raster = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha, depth: 8 });
  const number = seededNumbers(61);
  for (let i = 0; i < raster.data.length; i++) raster.data[i] = i % 5 === 0 ? number() * 256 : (i >> 3) & 255;
  return raster;
}

export const RECORD: PrintRecord = {
  program: 'blankcheck',
  version: '0.1.0',
  sourceSha256: '0123456789abcdef'.repeat(4),
  pixelSha256: 'fedcba9876543210'.repeat(4),
  blankId: 'tile-ceramic-8in',
  widthMm: 206,
  heightMm: 206.5,
  ppi: 300,
  mirrored: true,
};

export function tagsFor(raster: Raster, changes: Partial<PrintRecord> = {}): PrintReadyTags {
  const record = { ...RECORD, pixelSha256: hashPixels(raster), ...changes };
  return { ppi: record.ppi, record };
}
