import { createHash } from 'node:crypto';
import type { Intent } from '../icc/profile.ts';
import type { Raster } from '../raster/raster.ts';
import { findXmp } from './find-xmp.ts';
import { PRINT_RECORD_NAMESPACE, parsePrintRecordXmp } from './print-record-xmp.ts';

/** What the program writes into every print-ready file and every proof, so that it can recognise and explain it later. */
export interface PrintRecord {
  /** Given in proofs, which are looked at and never printed; left out in print-ready files. */
  readonly kind?: 'proof';
  readonly program: 'blankcheck';
  readonly version: string;
  /** SHA-256 of the artwork's bytes. */
  readonly sourceSha256: string;
  /** SHA-256 of the picture's samples, rows from the top, interleaved; of the pictures in a PDF as `hashPictures` has it. */
  readonly pixelSha256: string;
  readonly blankId: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ppi: number;
  readonly mirrored: boolean;
  /** What the file states where a printer's scale is corrected; left out where that is `ppi` on both axes. */
  readonly densityPpi?: { readonly x: number; readonly y: number };
  /** The printer profile that the picture was converted by; left out where it is sRGB. */
  readonly printerProfile?: {
    readonly sha256: string;
    readonly name: string;
    /** How it was converted; left out in files of versions that did not record it. */
    readonly intent?: Intent;
    readonly blackPointCompensation?: boolean;
  };
}

/** Hex SHA-256 of a raster's samples, rows from the top, interleaved; 16-bit ones in the machine's byte order. */
export function hashPixels({ data }: Raster): string {
  return createHash('sha256').update(data).digest('hex');
}

/** That of the only picture; of several, the SHA-256 of theirs in hex, one after the other. */
export function hashPictures(pictures: readonly Raster[]): string {
  const hashes = pictures.map(hashPixels);
  return hashes.length === 1 ? hashes[0]! : createHash('sha256').update(hashes.join('')).digest('hex');
}

/**
 * The record of a print-ready file or a proof of this program, also after other programs saved it anew in any raster format
 * and kept its XMP; null for any other bytes. Reads metadata only, never throws.
 */
export function readPrintRecord(bytes: Uint8Array): PrintRecord | null {
  for (const xml of findXmp(bytes, PRINT_RECORD_NAMESPACE)) {
    const record = parsePrintRecordXmp(xml);
    if (record) return record;
  }
  return null;
}
