import { basename, dirname, join, resolve } from 'node:path';
import {
  BlankcheckError,
  type JobPiece,
  type PrintRequest,
  type ReadSheetJob,
  turnOverBlank,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { findBlankByWord } from '../inputs/find-blank-by-word.ts';
import { planFile, splitName } from '../inputs/plan-file.ts';
import { isTaken } from '../output/is-taken.ts';
import type { PlannedOrder, PlannedSide } from './judge-orders.ts';
import type { PlannedSheets } from './plan-orders.ts';
import { readPlacing } from './read-request.ts';
import { readCopies } from './sheet-options.ts';

export interface JobToPlan extends ReadSheetJob {
  /** Its file, as it was named. */
  readonly word: string;
}

/**
 * What a job file says is to be printed. Files that it names are looked for from its own folder; what it leaves out is as
 * the options say. @throws BlankcheckError `bad-job` that names the line and the piece, `no-such-file`.
 */
export async function planJob(
  { job, lineOf, word }: JobToPlan,
  common: Omit<PrintRequest, 'blank'>,
  options: TypedOptions,
  cwd: string,
): Promise<Omit<PlannedSheets, 'common' | 'layout'>> {
  const folder = dirname(word);
  const planned: PlannedOrder[] = [];
  const missing: BlankcheckError[] = [];
  for (const [index, piece] of job.pieces.entries()) {
    try {
      planned.push(await planPiece(piece, folder, common, options, cwd));
    } catch (cause) {
      if (!(cause instanceof BlankcheckError)) throw cause;
      const field = fieldOf(cause);
      const path = ['pieces', index, ...(field in piece ? [field] : [])];
      const at = `pieces[${index}]${field in piece ? `.${field}` : ''}`;
      const told = placeFault(cause, `The job file ${word}, line ${lineOf(path)}, ${at}`);
      // Art that is not there leaves the others; a job that says what cannot be is wrong as a whole.
      if (cause.code !== 'no-such-file') throw told;
      missing.push(told);
    }
  }
  const { stem } = splitName(basename(word));
  return { planned, missing, given: [], named: { folder, stem, more: 0 } };
}

/** The fault of a word in a job file, with the place where it stands. */
export function placeFault(cause: BlankcheckError, where: string): BlankcheckError {
  return new BlankcheckError(cause.code, `${where}: ${cause.message}`, { cause });
}

/** Fields are called like the options whose words they hold, and messages name those. */
export function fieldOf({ code, message }: BlankcheckError): string {
  if (code === 'unknown-blank') return 'blank';
  if (code === 'unknown-sheet') return 'sheet';
  return /--([a-z]+)/.exec(message)?.[1] ?? '';
}

async function planPiece(
  piece: JobPiece,
  folder: string,
  common: Omit<PrintRequest, 'blank'>,
  options: TypedOptions,
  cwd: string,
): Promise<PlannedOrder> {
  const { art, secondSide, blank, copies, pair, mayTurn, turn, ...own } = piece;
  const words: TypedOptions = { ...options, ...own, ...(turn !== undefined && { turn: `${turn}` as const }) };
  const placing = readPlacing(words);
  const record = blank
    ? await findBlankByWord(blank, resolve(cwd, folder))
    : await findBlankByWord(blankOf(options), cwd);
  const side = async (name: string, of: PrintRequest): Promise<PlannedSide> => {
    const path = join(folder, name);
    if (!(await isTaken(resolve(cwd, path))))
      throw new BlankcheckError('no-such-file', `No such file: "${path}".`);
    return { artwork: planFile(path, resolve(cwd, path)), request: of, skipOwn: false };
  };
  const front: PrintRequest = { ...common, ...placing, blank: record };
  if (secondSide !== undefined && record.wrap)
    throw new BlankcheckError('bad-job', `secondSide: expected a flat blank, but ${record.id} is a wrap.`);
  const sides = [await side(art, front)];
  if (secondSide !== undefined)
    sides.push(await side(secondSide, { ...front, blank: turnOverBlank(record) }));
  return {
    sides,
    copies: copies ?? readCopies(options.copies),
    pair: pair ?? options.pair === true,
    mayTurn: mayTurn ?? options.mayTurn === true,
  };
}

function blankOf({ blank }: TypedOptions): string {
  if (blank !== undefined) return blank;
  throw new BlankcheckError(
    'missing-blank',
    'No blank was given.\nName it in the piece, or for all with --blank.',
  );
}
