import { BlankcheckError, type PrintRequest, type SheetLayout } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { type PlannedArgument, planInputs } from '../inputs/plan-inputs.ts';
import { readJobFile } from '../inputs/read-job-file.ts';
import type { Io } from '../io.ts';
import type { SheetNameParts } from '../output/name-sheets.ts';
import type { PlannedOrder } from './judge-orders.ts';
import { fieldOf, placeFault, planJob } from './plan-job.ts';
import { readBlank, readCommonRequest, readPlacing } from './read-request.ts';
import { readCopies, readLayout } from './sheet-options.ts';

/** What sheets are called after, and beside what they go. */
export type SheetsName = Pick<SheetNameParts, 'folder' | 'stem' | 'more'>;

export interface PlannedSheets {
  readonly planned: readonly PlannedOrder[];
  /** Words that name nothing; the others are done all the same. */
  readonly missing: readonly BlankcheckError[];
  /** What the words stand for; a job file has none. */
  readonly given: readonly PlannedArgument[];
  /** The job file that the sheets are called after and go beside; null where that is their art. */
  readonly named: SheetsName | null;
  /** What is the same for all pieces. */
  readonly common: Omit<PrintRequest, 'blank'>;
  readonly layout: SheetLayout;
}

/** What `sheet` is to print, by the words of its command line or by a job file. @throws BlankcheckError of kind `usage`. */
export async function planOrders(
  words: readonly string[],
  options: TypedOptions,
  { cwd, interrupt: signal }: Io,
): Promise<PlannedSheets> {
  const { job: word } = options;
  if (word !== undefined) {
    if (words.length > 0)
      throw new BlankcheckError(
        'bad-option',
        'Artwork was named beside a job file, which names its own.\nGive one of the two.',
      );
    return planJobFile(word, options, { cwd, signal });
  }
  const common = await readSheetRequest(options, cwd, signal);
  const request = { ...common, blank: await readBlank(options, cwd), ...readPlacing(options) };
  if (words.length === 0)
    throw new BlankcheckError(
      'missing-artwork',
      'No artwork was given.\nName files, folders or ZIP archives, or - for standard input.',
    );
  const copies = readCopies(options.copies);
  const { planned, missing } = await planInputs(words, {
    cwd,
    recursive: options.recursive === true,
    signal,
  });
  const artworks = planned.flatMap(({ artworks, kind }) =>
    artworks.map((artwork) => ({ artwork, skipOwn: kind !== 'artwork' })),
  );
  return {
    planned: artworks.map((side) => ({
      sides: [{ ...side, request }],
      copies,
      pair: options.pair === true,
      mayTurn: options.mayTurn === true,
    })),
    missing,
    given: planned,
    named: null,
    common,
    layout: readLayout(options),
  };
}

async function planJobFile(
  word: string,
  options: TypedOptions,
  { cwd, signal }: { readonly cwd: string; readonly signal: AbortSignal },
): Promise<PlannedSheets> {
  const read = await readJobFile(word, cwd, signal);
  const { sheet, gutter, platen } = read.job;
  const own = { ...(sheet && { sheet }), ...(gutter && { gutter }), ...(platen && { platen }) };
  const words = { ...own, ...options };
  try {
    const layout = readLayout(words);
    const common = await readSheetRequest(words, cwd, signal);
    return { ...(await planJob({ ...read, word }, common, options, cwd)), common, layout };
  } catch (cause) {
    const field = cause instanceof BlankcheckError ? fieldOf(cause) : '';
    if (!(cause instanceof BlankcheckError) || !(field in own) || field in options) throw cause;
    throw placeFault(cause, `The job file ${word}, line ${read.lineOf([field])}, ${field}`);
  }
}

/** The request of the options; without `--sheet`, the paper that the printer is set up for. */
async function readSheetRequest(
  options: TypedOptions,
  cwd: string,
  signal: AbortSignal,
): Promise<Omit<PrintRequest, 'blank'>> {
  if (options.proof !== undefined)
    throw new BlankcheckError(
      'bad-option',
      'Proofs are made of single pieces.\nTake prepare or check for --proof.',
    );
  const request = await readCommonRequest(options, cwd, signal);
  const sheet = request.sheet ?? request.printer?.paper;
  if (!sheet)
    throw new BlankcheckError(
      'missing-sheet',
      'No sheet was given.\nName it with --sheet, such as --sheet a4, or give --printer with a record of your printer.',
    );
  return { ...request, sheet };
}
