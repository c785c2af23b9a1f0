import { createHash } from 'node:crypto';
import { BlankcheckError } from './blankcheck-error.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { Intent } from './icc/profile.ts';
import { MAX_CONDITION_BYTES, readPrinterModel } from './read-condition.ts';

export interface PrinterProfileOptions {
  /** Relative colorimetric when left out. */
  readonly intent?: Intent;
  /** On when left out. */
  readonly blackPointCompensation?: boolean;
}

/**
 * The conversion of print-ready files for the printer whose ICC profile these bytes are. `name` is the file's; it
 * says in messages what was read.
 * @throws BlankcheckError `bad-printer-profile` that says what the bytes are and what was expected
 */
export function readPrinterProfile(
  bytes: Uint8Array,
  name: string,
  { intent = 'relative', blackPointCompensation = true }: PrinterProfileOptions = {},
): PrinterConversion {
  const profile = readPrinterModel(bytes, (is, options) => badPrinterProfile(name, is, options));
  if (profile.space !== 'rgb' && profile.space !== 'cmyk')
    throw badPrinterProfile(name, `it takes ${describeSpace(profile)}, which no print-ready file holds`);
  return {
    name: profile.description || name,
    profile,
    bytes,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    intent,
    blackPointCompensation,
  };
}

/** The error for a file that no print-ready file can be converted by; `is` says what it is instead. */
export function badPrinterProfile(name: string, is: string, options?: ErrorOptions): BlankcheckError {
  return new BlankcheckError(
    'bad-printer-profile',
    `"${name}" is no profile of a printer: ${is}.\nExpected the ICC profile of your printer, paper and ink, RGB or CMYK, with both directions (A2B and B2A tables), of at most ${MAX_CONDITION_BYTES / 1e6} MB.`,
    options,
  );
}

/** What the converted file will be printed on, to judge it by. */
export function conditionOf({ name, profile }: PrinterConversion): PrintingCondition {
  return { id: name, name, reference: false, attribution: null, profile };
}

function describeSpace({ space, channels }: PrinterConversion['profile']): string {
  return space === 'gray' ? 'gray' : `${channels} inks`;
}
