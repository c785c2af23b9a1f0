import { BlankcheckError } from '../../src/index.ts';
import type { InputPlan, PlannedArgument } from '../inputs/plan-inputs.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';

/** What was met on the way besides artworks. */
export interface WalkedInputs {
  readonly passedOver: number;
  readonly faults: number;
  /** Words that name nothing, and folders and archives that hold no artwork. */
  readonly usageErrors: readonly BlankcheckError[];
}

export interface ArtworkVisitor {
  /**
   * `false` where the artwork was passed over. `named`: somebody named this very file. Asked of every artwork, also when the
   * signal was aborted: it throws then, unless the artwork was done before.
   */
  visit(artwork: PlannedArtwork, named: boolean): Promise<boolean>;
  /** A fault of the program left this artwork without a report. */
  fault(path: string, error: unknown): void;
}

/**
 * Visits the artworks of a run one after another; ends without an error when the signal says so.
 * @throws BlankcheckError of kind `usage` where a visitor does: what is asked for cannot be had.
 */
export async function walkArtworks(
  { planned, missing }: InputPlan,
  signal: AbortSignal,
  { visit, fault }: ArtworkVisitor,
): Promise<WalkedInputs> {
  const usageErrors = [...missing];
  let passedOver = planned.reduce((sum, argument) => sum + argument.passedOver, 0);
  let faults = 0;
  for (const argument of planned) {
    let found = argument.repeats;
    for (const artwork of argument.artworks) {
      try {
        if (!(await visit(artwork, argument.kind === 'artwork'))) {
          passedOver += 1;
          continue;
        }
      } catch (error) {
        if (signal.aborted) continue;
        if (error instanceof BlankcheckError && error.kind === 'usage') throw error;
        faults += 1;
        fault(artwork.path, error);
      }
      found += 1;
    }
    if (found === 0 && !argument.isPart && !signal.aborted) usageErrors.push(noArtworkIn(argument));
  }
  return { passedOver, faults, usageErrors };
}

export function noArtworkIn({ word, kind }: Pick<PlannedArgument, 'word' | 'kind'>): BlankcheckError {
  const where =
    kind === 'archive' ? 'the archive' : kind === 'pattern' ? 'the files that match' : 'the folder';
  const below = kind === 'folder' ? ' Folders below it are looked into with --recursive.' : '';
  return new BlankcheckError(
    'no-artwork-in-folder',
    `No artwork in ${where} "${word}".\nArtwork is PNG, JPEG, WebP, TIFF, AVIF, GIF or SVG; hidden and print-ready files are passed over.${below}`,
  );
}
