/** One limit: its value, what it bounds and why it is what it is. */
export interface LimitRecord {
  readonly value: number;
  readonly unit: 'pixels' | 'bytes' | 'seconds';
  readonly meaning: string;
  readonly source: string;
}

/**
 * Every limit that reading and writing keep. Raised by an explicit option only; the imaging library's own
 * limits are never relaxed beside them.
 */
export const LIMITS = {
  maxBytes: {
    value: 1_250_000_000,
    unit: 'bytes',
    meaning: 'largest file that is read as one artwork',
    source:
      'derived: maxPixels of uncompressed 16-bit RGBA, 8 bytes a pixel, and 4 % for the rest of the file',
  },
  maxPixels: {
    value: 150_000_000,
    unit: 'pixels',
    meaning: 'largest artwork, width times height, that is decoded or drawn',
    source:
      'own measurement: a drawing of 225 million pixels took 1 GB of memory; 150 million are 1037 mm square at 300 ppi, more than any blank, and 600 MB as 8-bit RGBA',
  },
  maxCanvasPixels: {
    value: 268_402_689,
    unit: 'pixels',
    meaning: 'largest print-ready picture that is written',
    source: 'the imaging library (sharp) reads no larger picture by default: 16383 x 16383',
  },
  maxSeconds: {
    value: 60,
    unit: 'seconds',
    meaning: 'longest time one decoding or drawing may take by the clock',
    source:
      'own measurement: 150 million pixels decode in under 5 s on two cores; the rest is for slower machines',
  },
  maxArtworkSeconds: {
    value: 300,
    unit: 'seconds',
    meaning: 'longest time one artwork of several may take in all by the clock; then its process is ended',
    source:
      'derived: five times maxSeconds, for decoding, mending, checking, drawing and writing; not reached by anything that these allow',
  },
  maxSvgBytes: {
    value: 32_000_000,
    unit: 'bytes',
    meaning: 'largest drawing, after decompression, that is parsed',
    source: 'own measurement: 32 MB of markup are read in 2 to 4 s',
  },
  maxSvgSidePx: {
    value: 32_767,
    unit: 'pixels',
    meaning: 'longest side at which a drawing is drawn',
    source:
      'cairo image surfaces end at 32767 pixels a side (cairo documentation, CAIRO_STATUS_INVALID_SIZE)',
  },
  maxProfileBytes: {
    value: 16_000_000,
    unit: 'bytes',
    meaning: 'largest embedded profile, after decompression',
    source: 'from memory: the largest press profiles are about 4 MB',
  },
} as const satisfies Record<string, LimitRecord>;

export type LimitName = keyof typeof LIMITS;

/** The values in force, by name, in the unit that the table gives. */
export type Limits = Readonly<Record<LimitName, number>>;

/** The table's values, with those that the caller replaces. */
export function limitsWith(replaced: Partial<Limits> = {}): Limits {
  const table = Object.entries(LIMITS).map(([name, { value }]) => [name, value] as const);
  return { ...(Object.fromEntries(table) as Record<LimitName, number>), ...replaced };
}
