import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import {
  BlankcheckError,
  looksLikeMeasuredBody,
  type Pressing,
  parseDwellS,
  parseMeasuredBody,
  parseSize,
  parseTemperature,
  readDefects,
  readPrintRecord,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { findBlankByWord } from './find-blank-by-word.ts';
import { readFileBounded } from './read-bounded.ts';
import { readPrinterFile } from './read-printer-file.ts';

/**
 * What the options of `record` say of a pressed piece; `now` is when, unless `--date` says it.
 * @throws BlankcheckError of kind `usage` for the first that does not hold.
 */
export async function readPressing(
  options: TypedOptions,
  now: Date,
  cwd: string,
  signal: AbortSignal,
): Promise<Pressing> {
  const { blank: word, lot, measured, printer, paper, defect, note, date, art, photo } = options;
  if (word === undefined)
    throw new BlankcheckError('missing-blank', 'No blank was given.\nName what was pressed with --blank.');
  if (options.result === undefined)
    throw new BlankcheckError(
      'bad-result',
      'No result was given.\nSay how it came out with --result, 1 (lost) to 5.',
    );
  const blank = await findBlankByWord(word, cwd, signal);
  return {
    schemaVersion: 1,
    at: date === undefined ? now.toISOString() : readDate(date),
    blank: {
      id: blank.id,
      name: blank.name,
      ...(lot !== undefined && { lot }),
      ...(measured !== undefined && { measured: readMeasured(measured) }),
    },
    ...(art !== undefined && { art: { file: art, sha256: await hashArt(art, cwd, signal) } }),
    ...(printer !== undefined && { printer: await readPrinterName(printer, cwd, signal) }),
    ...(paper !== undefined && { paper }),
    recipe: readRecipe(options),
    result: Number(options.result),
    defects: defect === undefined ? [] : readDefects(defect),
    ...(photo !== undefined && { photo: { file: photo, sha256: await hashPhoto(photo, cwd, signal) } }),
    ...(note !== undefined && { note }),
  };
}

function readRecipe({ temperature, platenTemperature, time, pressure }: TypedOptions): Pressing['recipe'] {
  return {
    ...(temperature !== undefined && { temperature: parseTemperature(temperature, '--temperature') }),
    ...(platenTemperature !== undefined && {
      platenTemperature: parseTemperature(platenTemperature, '--platen-temperature'),
    }),
    ...(time !== undefined && { timeS: parseDwellS(time, '--time') }),
    ...(pressure !== undefined && { pressure }),
  };
}

/** As it was typed, once it is known to hold. */
function readMeasured(text: string): string {
  if (looksLikeMeasuredBody(text)) parseMeasuredBody(text, '--measured');
  else parseSize(text, '--measured');
  return text.trim();
}

/** A day that the calendar has: 30 February becomes 2 March when it is read and written. */
function readDate(text: string): string {
  const day = text.trim();
  const time = /^\d{4}-\d\d-\d\d$/.test(day) ? Date.parse(day) : Number.NaN;
  if (!Number.isNaN(time) && new Date(time).toISOString().startsWith(day)) return day;
  throw new BlankcheckError('bad-date', `Expected a day such as 2026-03-14 for --date, received "${text}".`);
}

/** The hash of the artwork: that of the file, or, of a print-ready one, the one that its own record holds. */
async function hashArt(file: string, cwd: string, signal: AbortSignal): Promise<string> {
  try {
    const bytes = await readFileBounded(resolve(cwd, file), signal);
    return readPrintRecord(bytes)?.sourceSha256 ?? hash(bytes);
  } catch (cause) {
    if (!(cause instanceof BlankcheckError)) throw cause;
    throw new BlankcheckError('no-such-file', `The art "${file}" cannot be used. ${cause.message}`, {
      cause,
    });
  }
}

/** null where the photo cannot be read: it may come later, and the record is wanted now. */
async function hashPhoto(file: string, cwd: string, signal: AbortSignal): Promise<string | null> {
  try {
    return hash(await readFileBounded(resolve(cwd, file), signal));
  } catch (cause) {
    if (cause instanceof BlankcheckError) return null;
    throw cause;
  }
}

/** A name, or that in the record of a printer. */
async function readPrinterName(word: string, cwd: string, signal: AbortSignal): Promise<string> {
  return /\.json$/i.test(word) ? (await readPrinterFile(word, cwd, signal)).name : word;
}

function hash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
