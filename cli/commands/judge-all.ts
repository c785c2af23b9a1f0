import type { ArtworkReport } from '../../src/index.ts';
import type { InputPlan } from '../inputs/plan-inputs.ts';
import { planOutputPaths } from '../output/output-paths.ts';
import { type JudgeOptions, judgeArtwork } from './judge-artwork.ts';
import { type ArtworkVisitor, type WalkedInputs, walkArtworks } from './walk-artworks.ts';

/** What becomes of a run as it goes on. */
export interface RunListener extends Pick<ArtworkVisitor, 'fault'> {
  report(report: ArtworkReport): void;
}

export interface JudgedRun extends WalkedInputs {
  readonly results: readonly ArtworkReport[];
}

/**
 * Judges the artworks of a run one after another; ends early, without an error, when the signal says so.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met.
 */
export async function judgeAll(
  plan: InputPlan,
  folders: { readonly out?: string | undefined; readonly proof?: string | undefined },
  options: JudgeOptions,
  listener: RunListener,
): Promise<JudgedRun> {
  const { signal, request, format } = options;
  const all = plan.planned.flatMap(({ artworks }) => artworks);
  const outputs = planOutputPaths(all, {
    blankId: request.blank.id,
    format,
    dummy: request.dummy,
    ...folders,
  });
  const results: ArtworkReport[] = [];
  const walked = await walkArtworks(plan, signal, {
    fault: (path, error) => listener.fault(path, error),
    visit: async (artwork, named) => {
      const report = await judgeArtwork(artwork, { outputs: outputs.get(artwork), skipOwn: !named }, options);
      if (report === null) return false;
      results.push(report);
      listener.report(report);
      return true;
    },
  });
  return { ...walked, results };
}
