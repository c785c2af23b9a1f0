import type { ArtworkReport, PieceView } from '../../src/index.ts';
import type { InputPlan } from '../inputs/plan-inputs.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import { type OutputOptions, planOutputPaths } from '../output/output-paths.ts';
import type { JudgedArtwork, JudgedPlace } from './judge-artwork.ts';
import { type ArtworkVisitor, type WalkedInputs, walkArtworks } from './walk-artworks.ts';

/** What becomes of a run as it goes on. */
export interface RunListener extends Pick<ArtworkVisitor, 'fault'> {
  report(report: ArtworkReport): void;
}

export interface JudgedRun extends WalkedInputs {
  readonly results: readonly ArtworkReport[];
  /** The same with their pictures, where these are asked for. */
  readonly viewed: readonly ViewedArtwork[];
}

export interface ViewedArtwork extends JudgedArtwork {
  readonly view: PieceView;
}

/** Whoever judges: this process, or the pool. A promise each, whatever is done first. */
export type Judge = (artwork: PlannedArtwork, place: JudgedPlace) => Promise<JudgedArtwork | null>;

/** An artwork and what is to be known of it to be judged. */
export interface PlacedInput {
  readonly artwork: PlannedArtwork;
  readonly place: JudgedPlace;
}

/** Every artwork of a plan with where its files go, in input order. */
export function placeInputs(
  { planned }: InputPlan,
  outputs: Omit<OutputOptions, 'blankId'>,
  blankId: string,
): readonly PlacedInput[] {
  const all = planned.flatMap(({ artworks }) => artworks);
  const paths = planOutputPaths(all, { blankId, ...outputs });
  return planned.flatMap(({ kind, artworks }) =>
    artworks.map((artwork) => ({
      artwork,
      place: { outputs: paths.get(artwork), skipOwn: kind !== 'artwork' },
    })),
  );
}

/**
 * Collects what becomes of the artworks of a run in input order; ends without an error when the signal says so.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met.
 */
export async function judgeAll(
  plan: InputPlan,
  inputs: readonly PlacedInput[],
  judge: Judge,
  signal: AbortSignal,
  listener: RunListener,
): Promise<JudgedRun> {
  const places = new Map(inputs.map(({ artwork, place }) => [artwork, place]));
  const results: ArtworkReport[] = [];
  const viewed: ViewedArtwork[] = [];
  let faults = 0;
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => listener.fault(path, error),
    visit: async (artwork) => {
      const judged = await judge(artwork, places.get(artwork)!);
      if (judged === null) return false;
      const { report, view } = judged;
      results.push(report);
      if (view) viewed.push({ report, view });
      if (judged.fault === undefined) listener.report(report);
      else {
        faults += 1;
        listener.fault(artwork.path, judged.fault);
      }
      return true;
    },
  });
  return { ...walked, faults: walked.faults + faults, results, viewed };
}
