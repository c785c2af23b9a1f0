import { type CostInputs, choosePrintReadyFormat, readCostInputs } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Origin } from '../inputs/planned-artwork.ts';
import { createArtworkReader } from '../inputs/read-artworks.ts';
import type { Io } from '../io.ts';
import { parseLimits } from '../limits.ts';
import { createInputGuard } from '../output/input-guard.ts';
import { createOutFolders, type OutFolders } from '../output/out-folders.ts';
import type { TempFiles } from '../output/temp-files.ts';
import type { JudgeOptions } from './judge-artwork.ts';
import { readRequest } from './read-request.ts';

/**
 * How the artworks of a run are judged, from the options as they were typed. `origins` are those of all its artworks;
 * a promise of them is waited for only where one is about to be replaced.
 * @throws BlankcheckError of kind `usage` for the first option that does not hold.
 */
export async function readJudging(
  command: 'prepare' | 'check',
  options: TypedOptions,
  { cwd, stdin, interrupt: signal }: Pick<Io, 'cwd' | 'stdin' | 'interrupt'>,
  temps: TempFiles,
  origins: readonly Origin[] | (() => readonly Origin[]),
  folders: OutFolders = createOutFolders(),
): Promise<JudgeOptions> {
  const request = await readRequest(options, cwd, signal);
  const limits = parseLimits(options.limit ?? []);
  return {
    request,
    format: choosePrintReadyFormat(request.conversion, {
      format: options.format,
      background: request.background,
      sheet: request.sheet,
    }),
    writes: command === 'prepare' && options.dryRun !== true,
    proof:
      options.dryRun === true || options.proof === undefined ? null : { mark: options.proofMark === true },
    picture: options.picture !== undefined && options.dryRun !== true,
    cost: readCost(options),
    view: options.report !== undefined,
    anyway: options.anyway === true,
    force: options.force === true,
    cwd,
    signal,
    limits,
    reader: createArtworkReader(stdin, signal, limits.maxBytes),
    guard: createInputGuard(origins),
    temps,
    folders,
  };
}

/** Prices that stand in the settings ask for nothing by themselves. */
function readCost({ cost, costOf = [] }: TypedOptions): CostInputs | null {
  const inputs = readCostInputs(costOf);
  return cost === true ? inputs : null;
}
