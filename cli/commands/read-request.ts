import { dirname, isAbsolute, join } from 'node:path';
import {
  BlankcheckError,
  type BlankRecord,
  type JobRequest,
  looksLikeMeasuredBody,
  type Printer,
  type PrintRequest,
  parseMeasuredBody,
  parseNonNegativeLength,
  parseOffset,
  parsePaper,
  parsePositiveLength,
  parseSize,
  parseWrapPlacing,
  readMarkKinds,
  readMends,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { parseBackground } from '../background.ts';
import { findBlankByWord } from '../inputs/find-blank-by-word.ts';
import { findConditionByWord } from '../inputs/find-condition-by-word.ts';
import { readPrinterFile } from '../inputs/read-printer-file.ts';
import { readConversion } from '../inputs/read-printer-profile-file.ts';

/**
 * What the options of `prepare` and `check` ask for.
 * @throws BlankcheckError of kind `usage` for the first that does not hold.
 */
export async function readRequest(
  options: TypedOptions,
  cwd: string,
  signal: AbortSignal,
): Promise<PrintRequest> {
  const common = await readCommonRequest(options, cwd, signal);
  return { ...common, blank: await readBlank(options, cwd, signal), ...readPlacing(options) };
}

/** The blank of `--blank`. @throws as readRequest */
export async function readBlank(
  { blank }: TypedOptions,
  cwd: string,
  signal?: AbortSignal,
): Promise<BlankRecord> {
  if (blank === undefined) {
    throw new BlankcheckError(
      'missing-blank',
      'No blank was given.\nName it with --blank, such as --blank tile-ceramic-8in; see blankcheck blanks for the catalogue.',
    );
  }
  return findBlankByWord(blank, cwd, signal);
}

/** How the art is placed on its blank. @throws as readRequest */
export function readPlacing(options: TypedOptions): Omit<JobRequest, 'blank' | 'ppi' | 'printer'> {
  const { measured, wrap, hand, development, width, height, fit, turn, offset, bleed, safe, surface } =
    options;
  refuseFitBesideSize(options);
  return {
    ...(measured !== undefined && { measured: readMeasured(measured) }),
    ...(wrap !== undefined && { wrap: parseWrapPlacing(wrap) }),
    ...(hand !== undefined && { hand }),
    ...(development !== undefined && { development }),
    ...(width !== undefined && { widthMm: parsePositiveLength(width, '--width') }),
    ...(height !== undefined && { heightMm: parsePositiveLength(height, '--height') }),
    ...(fit !== undefined && { fit }),
    ...(turn !== undefined && { turn: Number(turn) as 0 | 90 | 180 | 270 }),
    ...(offset !== undefined && { offsetMm: parseOffset(offset, '--offset') }),
    ...(bleed !== undefined && { bleedMm: parseNonNegativeLength(bleed, '--bleed') }),
    ...(safe !== undefined && { safeMm: parseNonNegativeLength(safe, '--safe') }),
    ...(surface !== undefined && { surface }),
  };
}

function readMeasured(text: string): JobRequest['measured'] & object {
  return looksLikeMeasuredBody(text) ? parseMeasuredBody(text, '--measured') : parseSize(text, '--measured');
}

/** What is the same for every piece of a run. @throws as readRequest */
export async function readCommonRequest(
  options: TypedOptions,
  cwd: string,
  signal: AbortSignal,
): Promise<Omit<PrintRequest, 'blank'>> {
  refuseMarksWithoutSheet(options);
  refuseExtendWithoutMend(options);
  const { condition, printer, mend, extend, sheet, omitMarks, ppi, background } = options;
  const record = printer === undefined ? undefined : await readPrinterFile(printer, cwd, signal);
  const printerProfile = options.printerProfile ?? findOwnProfile(printer, record);
  const conversion = await readConversion(
    { ...options, ...(printerProfile !== undefined && { printerProfile }) },
    cwd,
    signal,
  );
  return {
    ...(ppi !== undefined && { ppi: parsePpi(ppi) }),
    ...(record !== undefined && { printer: record }),
    ...(sheet !== undefined && { sheet: parsePaper(sheet) }),
    ...(options.dummy === true && { dummy: true }),
    ...(omitMarks !== undefined && { omitMarks: readMarkKinds(omitMarks) }),
    ...(condition !== undefined && { condition: await findConditionByWord(condition, cwd, signal) }),
    ...(conversion !== undefined && { conversion }),
    ...(extend !== undefined && { extend }),
    ...(mend !== undefined && { mends: readMends(mend) }),
    ...(background !== undefined && { background: await parseBackground(background) }),
  };
}

/** The profile that a printer's record names, from the folder of the record. */
function findOwnProfile(file: string | undefined, record: Printer | undefined): string | undefined {
  if (file === undefined || record?.profile === undefined) return undefined;
  return isAbsolute(record.profile) ? record.profile : join(dirname(file), record.profile);
}

/** A size that is given beside it would win, unseen. */
function refuseFitBesideSize({ fit, width, height }: TypedOptions): void {
  if (fit !== 'cover' || (width === undefined && height === undefined)) return;
  const size = width === undefined ? '--height' : '--width';
  throw new BlankcheckError(
    'bad-option',
    `--fit cover fills the blank, and ${size} asks for another size: the other would be ignored.\nGive one of the two.`,
  );
}

function refuseExtendWithoutMend({ extend, mend }: TypedOptions): void {
  if (extend === undefined || (mend !== undefined && readMends(mend).includes('extend-edges'))) return;
  throw new BlankcheckError(
    'bad-option',
    `--extend ${extend} was given, but nothing is extended.\nAdd --mend extend-edges, or leave --extend out.`,
  );
}

function refuseMarksWithoutSheet({ sheet, omitMarks, dummy }: TypedOptions): void {
  if (dummy === true && sheet === undefined)
    throw new BlankcheckError(
      'bad-option',
      '--dummy was given, but an outline is drawn on a whole page only.\nAdd --sheet, such as --sheet a4.',
    );
  if (omitMarks === undefined || sheet !== undefined) return;
  throw new BlankcheckError(
    'bad-option',
    '--omit-marks was given, but only a whole page has marks.\nAdd --sheet, such as --sheet a4, or leave --omit-marks out.',
  );
}

function parsePpi(text: string): number {
  if (/^\d+(?:\.\d+)?$/.test(text.trim())) return Number(text);
  throw new BlankcheckError(
    'ppi-out-of-range',
    `Expected a plain number of pixels per inch for --ppi, received "${text}".\nWrite it in digits and without a unit, such as --ppi 300.`,
  );
}
