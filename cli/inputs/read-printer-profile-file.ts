import { resolve } from 'node:path';
import {
  BlankcheckError,
  badPrinterProfile,
  MAX_CONDITION_BYTES,
  type PrinterConversion,
  readPrinterProfile,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { whyUnusable } from './read-bounded.ts';
import { isNamedFileThere, readNamedFile } from './read-named-file.ts';

type ConversionOptions = Pick<TypedOptions, 'printerProfile' | 'intent' | 'blackPointCompensation'>;

/**
 * The conversion that `--printer-profile` and its two companions ask for; undefined where they do not.
 * @throws BlankcheckError `bad-printer-profile`, `no-such-file`, `bad-option`; the signal's reason when it was aborted
 */
export async function readConversion(
  { printerProfile: word, intent, blackPointCompensation = true }: ConversionOptions,
  cwd: string,
  signal: AbortSignal,
): Promise<PrinterConversion | undefined> {
  if (word === undefined) {
    refuseAlone(intent !== undefined, '--intent');
    refuseAlone(!blackPointCompensation, '--no-black-point-compensation');
    return undefined;
  }
  const path = resolve(cwd, word);
  if (!(await isNamedFileThere(path)))
    throw new BlankcheckError(
      'no-such-file',
      `The profile "${word}" is not there.\nSee --printer-profile in --help.`,
    );
  return readPrinterProfile(await readBytes(path, word, signal), word, {
    ...(intent === undefined ? {} : { intent }),
    blackPointCompensation,
  });
}

function refuseAlone(given: boolean, option: string): void {
  if (given)
    throw new BlankcheckError(
      'bad-option',
      `${option} says how the file is converted for a printer, and no printer is named.\nGive its ICC profile with --printer-profile too.`,
    );
}

async function readBytes(path: string, word: string, signal: AbortSignal): Promise<Uint8Array> {
  try {
    return await readNamedFile(path, signal, MAX_CONDITION_BYTES);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw badPrinterProfile(word, whyUnusable(cause), { cause });
  }
}
