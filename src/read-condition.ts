import { BlankcheckError } from './blankcheck-error.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import { FORMAT_NAMES } from './formats/container-facts.ts';
import { namedFormat } from './formats/other-formats.ts';
import { sniffFormat } from './formats/sniff.ts';
import type { IccProfile } from './icc/profile.ts';
import { readProfile } from './icc/read-profile.ts';

/** Printer profiles have some hundred kilobytes to a few megabytes; far larger files are something else (own choice). */
export const MAX_CONDITION_BYTES = 16_000_000;

/**
 * The printing condition of a maker's own ICC profile: of a printer, or of an RGB space or display that stands for
 * one, in both directions. `name` is the file's; it says in messages what was read.
 * @throws BlankcheckError `bad-condition` that says what the bytes are and what was expected
 */
export function readCondition(bytes: Uint8Array, name: string): PrintingCondition {
  const profile = readPrinterModel(bytes, (is, options) => badCondition(name, is, options));
  return { id: name, name: profile.description || name, reference: false, attribution: null, profile };
}

/** The error for a file that is no printing condition; `is` says what it is instead. */
export function badCondition(name: string, is: string, options?: ErrorOptions): BlankcheckError {
  return new BlankcheckError(
    'bad-condition',
    `"${name}" is no printing condition: ${is}.\nExpected the ICC profile of a printer with its paper and ink, with both directions (A2B and B2A tables), of at most ${MAX_CONDITION_BYTES / 1e6} MB.`,
    options,
  );
}

/** What makes an error of what a file is instead of the profile of a printer. */
export type Refuse = (is: string, options?: ErrorOptions) => BlankcheckError;

/** The profile in a maker's own file, usable in both directions. @throws what `refuse` makes of anything else */
export function readPrinterModel(bytes: Uint8Array, refuse: Refuse): IccProfile {
  const profile = readOrExplain(bytes, refuse);
  const fault = findFault(profile);
  if (fault !== null) throw refuse(fault);
  return profile;
}

function readOrExplain(bytes: Uint8Array, refuse: Refuse): IccProfile {
  if (bytes.length === 0) throw refuse('the file is empty (0 bytes)');
  if (bytes.length > MAX_CONDITION_BYTES) throw refuse(`the file has ${Math.ceil(bytes.length / 1e6)} MB`);
  try {
    return readProfile(bytes);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw refuse(whatElse(bytes) ?? `it cannot be used (${cause.message})`, { cause });
  }
}

/** What bytes that are no profile are, where that can be told. */
function whatElse(bytes: Uint8Array): string | null {
  const format = sniffFormat(bytes);
  if (format !== null) return `it is ${FORMAT_NAMES[format]}, a picture`;
  const other = namedFormat(bytes);
  if (other !== null) return `it is ${other.name}`;
  return isText(bytes) ? 'it is a text' : null;
}

function isText(bytes: Uint8Array): boolean {
  return bytes.subarray(0, 512).every((byte) => byte >= 0x20 || (byte >= 0x09 && byte <= 0x0d));
}

function findFault(profile: IccProfile): string | null {
  const { class: kind, space, toConnection, fromConnection } = profile;
  if (kind === 'input') return 'it is the profile of a scanner or camera';
  if (space === 'lab' || space === 'xyz')
    return `it describes ${space.toUpperCase()}, which no printer takes`;
  if (kind !== 'output' && space !== 'rgb') return `it is a ${kind} profile of ${space} colours`;
  if (toConnection === null) return 'it does not say what the printer makes of its inks (no A2B table)';
  if (fromConnection === null) return 'it does not say which inks make a colour (no B2A table)';
  return null;
}
