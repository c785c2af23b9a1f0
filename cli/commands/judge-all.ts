import { type ArtworkReport, BlankcheckError } from '../../src/index.ts';
import type { InputPlan, PlannedArgument } from '../inputs/plan-inputs.ts';
import { planOutputPaths } from '../output/output-paths.ts';
import { type JudgeOptions, judgeArtwork } from './judge-artwork.ts';

/** What becomes of a run as it goes on. */
export interface RunListener {
  report(report: ArtworkReport): void;
  /** A fault of the program left this artwork without a report. */
  fault(path: string, error: unknown): void;
}

export interface JudgedRun {
  readonly results: readonly ArtworkReport[];
  readonly passedOver: number;
  readonly faults: number;
  /** Words that name nothing, and folders and archives that hold no artwork. */
  readonly usageErrors: readonly BlankcheckError[];
}

/**
 * Judges the artworks of a run one after another; ends early, without an error, when the signal says so.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met.
 */
export async function judgeAll(
  { planned, missing }: InputPlan,
  folders: { readonly out?: string | undefined; readonly proof?: string | undefined },
  options: JudgeOptions,
  listener: RunListener,
): Promise<JudgedRun> {
  const { signal, request, format } = options;
  const all = planned.flatMap(({ artworks }) => artworks);
  const outputs = planOutputPaths(all, { blankId: request.blank.id, format, ...folders });
  const results: ArtworkReport[] = [];
  const usageErrors = [...missing];
  let passedOver = planned.reduce((sum, argument) => sum + argument.passedOver, 0);
  let faults = 0;
  for (const argument of planned) {
    let found = argument.repeats;
    for (const artwork of argument.artworks) {
      if (signal.aborted) break;
      try {
        const place = { outputs: outputs.get(artwork), skipOwn: argument.kind !== 'artwork' };
        const report = await judgeArtwork(artwork, place, options);
        if (report === null) {
          passedOver += 1;
          continue;
        }
        results.push(report);
        listener.report(report);
      } catch (error) {
        if (signal.aborted) break;
        if (error instanceof BlankcheckError && error.kind === 'usage') throw error;
        faults += 1;
        listener.fault(artwork.path, error);
      }
      found += 1;
    }
    if (found === 0 && !signal.aborted) usageErrors.push(noArtworkIn(argument));
  }
  return { results, passedOver, faults, usageErrors };
}

function noArtworkIn({ word, kind }: PlannedArgument): BlankcheckError {
  const where = kind === 'archive' ? 'archive' : 'folder';
  const below = kind === 'folder' ? ' Folders below it are looked into with --recursive.' : '';
  return new BlankcheckError(
    'no-artwork-in-folder',
    `No artwork in the ${where} "${word}".\nArtwork is PNG, JPEG, WebP, TIFF, AVIF, GIF or SVG; hidden and print-ready files are passed over.${below}`,
  );
}
