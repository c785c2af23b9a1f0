/** What the program writes into every print-ready file, so that it can recognise and explain it later. */
export interface PrintRecord {
  readonly program: 'blankcheck';
  readonly version: string;
  /** SHA-256 of the artwork's bytes. */
  readonly sourceSha256: string;
  /** SHA-256 of the picture's samples, rows from the top, interleaved. */
  readonly pixelSha256: string;
  readonly blankId: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ppi: number;
  readonly mirrored: boolean;
}
