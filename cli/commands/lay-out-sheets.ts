import { dirname, join, resolve } from 'node:path';
import {
  type BlankcheckError,
  choosePrintReadyFormat,
  DEFAULT_PPI,
  type LaidSheets,
  laySheets,
  laySheetsGivingWay,
  type PrintRequest,
  type SheetLayout,
  type SheetOrder,
  type SheetsToLay,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { exitCodeOf } from '../exit-code.ts';
import { giveWayTo } from '../give-way.ts';
import type { PlannedArgument } from '../inputs/plan-inputs.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { createInputGuard } from '../output/input-guard.ts';
import { nameSheets } from '../output/name-sheets.ts';
import { createOutFolders } from '../output/out-folders.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { judgeOrders } from './judge-orders.ts';
import { planOrders, type SheetsName } from './plan-orders.ts';
import { tellPeopleOfSheets, tellProgramsOfSheets } from './tell-sheets.ts';
import { noArtworkIn } from './walk-artworks.ts';
import { writeSheets } from './write-sheets.ts';

const EXTENSIONS = { png: 'png', tiff: 'tif', pdf: 'pdf' } as const;

/**
 * `sheet`: judges the artworks, packs their copies on as few pages as it can, writes the pages. Tells people on standard
 * error and programs on standard output. Returns the exit code. @throws BlankcheckError of kind `usage`.
 */
export async function layOutSheets(
  words: readonly string[],
  options: TypedOptions,
  io: Io,
  temps: TempFiles,
): Promise<number> {
  const { cwd, interrupt: signal } = io;
  const limits = parseLimits(options.limit ?? []);
  const { planned, missing, given, named, common, layout } = await planOrders(words, options, io);
  const artworks = planned.flatMap(({ sides }) => sides.map(({ artwork }) => artwork));
  const ppi = common.ppi ?? common.printer?.ppi ?? finestOf(planned.flatMap(({ sides }) => sides));
  const request = { ...common, ppi };
  const format = choosePrintReadyFormat(common.conversion, {
    format: options.format,
    background: common.background,
    sheet: common.sheet,
  });
  // Before a picture is read: what is wrong with the page itself.
  laySheets([], request, layout);
  const people = tellPeopleOfSheets(options, io, artworks.length);
  const judged = await judgeOrders(
    planned.map((order) => ({
      ...order,
      sides: order.sides.map((side) => ({ ...side, request: { ...side.request, ppi } })),
    })),
    {
      anyway: options.anyway === true,
      signal,
      limits,
      reader: createArtworkReader(io.stdin, signal, limits.maxBytes),
    },
    people,
  );
  const results = judged.orders.flatMap(({ sides }) => sides.map(({ report }) => report));
  const laid = await layUntilInterrupted(judged.orders, request, layout, signal);
  const name = named ?? nameAfter(judged.artworks);
  const paths =
    options.dryRun === true
      ? []
      : nameSheets({
          ...name,
          folder: options.out ?? join(name.folder, 'print-ready'),
          paper: common.sheet!.id,
          // All pages of a PDF are in one file.
          sheets: format === 'pdf' ? Math.min(laid.sheets.length, 1) : laid.sheets.length,
          extension: EXTENSIONS[format],
        });
  const folders = createOutFolders();
  await folders.begin(paths.map((path) => dirname(resolve(cwd, path))));
  const driverMirrors = common.printer?.driverMirrors ?? false;
  const sheets = await writeSheets(laid.sheets, paths, {
    format,
    conversion: common.conversion,
    driverMirrors,
    limits,
    force: options.force === true,
    cwd,
    signal,
    guard: createInputGuard(artworks.map(({ origin }) => origin)),
    temps,
    folders,
  }).finally(() => folders.end());
  const usageErrors = signal.aborted ? missing : [...missing, ...refuseEmpty(given, judged.passedOver)];
  const run = {
    results,
    driverMirrors,
    passedOver: given.reduce((sum, { passedOver }) => sum + passedOver, judged.passedOver.length),
    usageErrors,
    sheets,
    leftOut: laid.leftOut,
    apart: laid.apart,
  };
  people.end(run);
  const exitCode = exitCodeOf({
    results,
    failOn: options.failOn ?? 'error',
    usageErrors: usageErrors.length,
    faults: judged.faults,
    interruptedBy: interruptionOf(signal),
    unmade: laid.leftOut.length + sheets.filter(({ error }) => error).length,
  });
  if (exitCode !== 2) tellProgramsOfSheets(run, options, io);
  return exitCode;
}

/** No sheet at all once the run was interrupted: what is packed by halves is of no use. */
async function layUntilInterrupted(
  orders: readonly SheetOrder[],
  request: SheetsToLay,
  layout: SheetLayout,
  signal: AbortSignal,
): Promise<LaidSheets> {
  try {
    signal.throwIfAborted();
    return await laySheetsGivingWay(orders, request, layout, giveWayTo(signal));
  } catch (error) {
    if (!signal.aborted) throw error;
    return laySheets([], request, layout);
  }
}

/** Folders, archives and patterns that stand for no artwork but files of our own. */
function refuseEmpty(
  given: readonly PlannedArgument[],
  passedOver: readonly PlannedArtwork[],
): readonly BlankcheckError[] {
  const own = new Set(passedOver);
  return given
    .filter(({ artworks, repeats }) => repeats === 0 && artworks.every((artwork) => own.has(artwork)))
    .map(noArtworkIn);
}

/** Files of our own that were passed over have no part in it: with them the name would be another one after each run. */
function nameAfter([first, ...others]: readonly PlannedArtwork[]): SheetsName {
  return { folder: first?.folder ?? '.', stem: first?.stem ?? 'sheet', more: others.length };
}

/** A page has one resolution: the finest that a blank on it asks for. */
function finestOf(sides: readonly { readonly request: PrintRequest }[]): number {
  return Math.max(...sides.map(({ request }) => request.blank.ppi ?? DEFAULT_PPI), 1);
}
