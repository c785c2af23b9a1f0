import { realpath } from 'node:fs/promises';
import { resolve } from 'node:path';
import {
  BlankcheckError,
  escapeJsonText,
  judgeRulers,
  parseOffset,
  parsePositiveLength,
  readPrinter,
  renderCalibration,
  storeCorrection,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError } from '../errors.ts';
import { readPrinterText } from '../inputs/read-printer-file.ts';
import type { Io } from '../io.ts';
import { publishFile } from '../output/publish-file.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { describeTerminal } from '../terminal.ts';

/**
 * `calibrate`: what two measured rulers tell of a printer, stored in its record where that mends it. Returns 0 when the
 * printer prints at its size or will do so now, 1 for a fault that only the maker can mend and for a record that cannot
 * be written. With `--json` a document that fulfils seeds/schema/calibration.schema.json.
 * @throws BlankcheckError of kind `usage`.
 */
export async function calibratePrinter(
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  const { cwd, interrupt: signal, stdout, stderr, env } = io;
  const { printer: file, ruler, rulerLength } = options;
  if (words.length > 0) throw new BlankcheckError('bad-option', `Expected no word, received "${words[0]}".`);
  if (file === undefined)
    throw new BlankcheckError(
      'missing-printer',
      'No printer was given.\nName its record with --printer <file>.',
    );
  if (ruler === undefined)
    throw new BlankcheckError(
      'bad-ruler',
      'No ruler was given.\nGive what the two rulers of a sheet measure, such as --ruler 100mm,99.6mm.',
    );
  const measuredMm = parseOffset(ruler, '--ruler');
  const text = await readPrinterText(file, cwd, signal);
  const printer = await readPrinter(text, file);
  const verdict = judgeRulers(printer, {
    measuredMm,
    ...(rulerLength !== undefined && { nominalMm: parseRulerLength(rulerLength) }),
  });
  const stored = verdict.code === 'corrected' && options.dryRun !== true;
  const error = stored
    ? await store(file, await storeCorrection(text, verdict.scaleCorrection), io, temps)
    : null;
  const told = { printer: printer.name, stored: stored && error === null };
  if (options.json) {
    const document = {
      schemaVersion: 1,
      ...told,
      ...verdict,
      error: error && { code: error.code, message: error.message },
    };
    stdout.write(escapeJsonText(`${JSON.stringify(document, null, 2)}\n`));
  }
  if (error) printError(stderr, error);
  if (!options.json || error)
    stderr.write(renderCalibration(verdict, told, describeTerminal(stderr, env, options)));
  return error === null && (verdict.code === 'exact' || verdict.code === 'corrected') ? 0 : 1;
}

/** `80mm` for both rulers, or `100mm,80mm`. */
function parseRulerLength(text: string) {
  if (text.includes(',')) return parseOffset(text, '--ruler-length');
  const length = parsePositiveLength(text, '--ruler-length');
  return { x: length, y: length };
}

async function store(
  file: string,
  text: string,
  { cwd, interrupt: signal }: Io,
  temps: TempFiles,
): Promise<BlankcheckError | null> {
  try {
    // Through a link, which stays one: the record may be kept elsewhere.
    const place = { path: await realpath(resolve(cwd, file)), told: file };
    await publishFile(place, new TextEncoder().encode(text), { replace: true, temps, signal });
    return null;
  } catch (error) {
    if (error instanceof BlankcheckError) return error;
    throw error;
  }
}
