import { dirname, resolve } from 'node:path';
import {
  type ArtworkReport,
  BlankcheckError,
  limitsWith,
  reportUnreadable,
  viewBareBlank,
} from '../../src/index.ts';
import type { Judge, PlacedInput } from '../commands/judge-all.ts';
import { type JudgedArtwork, type JudgeOptions, judgeArtwork } from '../commands/judge-artwork.ts';
import { namesBeside, tellInsteadOf } from '../inputs/choose-format.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { Ending } from './child-process.ts';
import type { SetUp } from './messages.ts';
import type { PoolSize } from './pool-size.ts';
import { runPool } from './run-pool.ts';

export interface PooledRun {
  readonly program: string;
  readonly setUp: Omit<SetUp, 'kind'>;
  readonly size: PoolSize;
  /** Told of every artwork that is begun. */
  readonly started: (artwork: PlannedArtwork) => void;
  /** Told as soon as one is done, whatever its place; null where there is no report of it. Waited for. */
  readonly done: (artwork: PlannedArtwork, report: ArtworkReport | null) => Promise<void>;
}

/**
 * A judge that starts at once on all inputs whose bytes are in files, in processes of their own; the others it judges in
 * this process when they are asked for. An artwork that ends its process, or takes too long, is unreadable.
 */
export function judgeInPool(inputs: readonly PlacedInput[], run: PooledRun, options: JudgeOptions): Judge {
  const { temps, signal, cwd } = options;
  const maxSeconds = limitsWith(options.limits).maxArtworkSeconds;
  const pooled = inputs.filter(
    ({ artwork: { origin } }) => origin.kind === 'file' || origin.kind === 'entry',
  );
  const endings = runPool(pooled, {
    ...run,
    maxSeconds,
    signal,
    handed: ({ artwork, place: { outputs } }, pid) => {
      run.started(artwork);
      for (const path of [outputs?.printReady, outputs?.proof])
        if (path) temps.adopt(pid, dirname(resolve(cwd, path)));
    },
    ended: (pid) => temps.release(pid),
  });
  const ended = new Map(
    [...endings].map(([{ artwork }, ending]) => {
      const judged = tellDone(artwork, run, options, () =>
        ending.then((how) => judgedOf(artwork, how, options, maxSeconds)),
      );
      // Whoever asks for it is told.
      judged.catch(() => undefined);
      return [artwork, judged] as const;
    }),
  );
  return async (artwork, place) => {
    const early = ended.get(artwork);
    if (early !== undefined) return early;
    return judgeHere(run, options)(artwork, place);
  };
}

/** A judge that does all in this process, each when it is asked for. */
export function judgeHere(run: Pick<PooledRun, 'started' | 'done'>, options: JudgeOptions): Judge {
  return (artwork, place) => {
    run.started(artwork);
    return tellDone(artwork, run, options, () => judgeArtwork(artwork, place, options));
  };
}

async function tellDone(
  artwork: PlannedArtwork,
  { done }: Pick<PooledRun, 'done'>,
  options: JudgeOptions,
  judge: () => Promise<JudgedArtwork | null>,
): Promise<JudgedArtwork | null> {
  let judged: JudgedArtwork | null = null;
  try {
    judged = await judge().catch((error: unknown) => reportFault(artwork, error, options));
    return judged;
  } finally {
    await done(artwork, judged?.report ?? null);
  }
}

async function judgedOf(
  artwork: PlannedArtwork,
  ending: Ending,
  options: JudgeOptions,
  maxSeconds: number,
): Promise<JudgedArtwork | null> {
  switch (ending.kind) {
    case 'judged':
      return ending.judged;
    case 'refused':
      throw new BlankcheckError(ending.code, ending.message);
    case 'interrupted':
      throw options.signal.reason;
    case 'fault':
      throw Object.assign(new Error(ending.message), { name: ending.name });
    case 'crashed':
      return reportLost(
        artwork,
        new BlankcheckError(
          'crashed',
          `The process that judged it ended (${ending.by}); the other artworks are not touched by that. Open it in a picture program, export it anew, and try that.`,
        ),
        options,
      );
    case 'too-slow':
      return reportLost(
        artwork,
        new BlankcheckError(
          'too-slow',
          `Expected at most ${maxSeconds} s for one artwork, and it took longer. Export it simpler or smaller, or raise the limit with --limit maxArtworkSeconds=<n>.`,
        ),
        options,
      );
  }
}

/** A fault of the program costs its artwork, which is told of in every output all the same. @throws what is no such fault */
async function reportFault(
  artwork: PlannedArtwork,
  fault: unknown,
  options: JudgeOptions,
): Promise<JudgedArtwork> {
  const isUsage = fault instanceof BlankcheckError && fault.kind === 'usage';
  if (options.signal.aborted || isUsage) throw fault;
  const told = (fault instanceof Error ? `${fault.name}: ${fault.message}` : String(fault)).replace(
    /\.$/,
    '',
  );
  const error = {
    code: 'fault',
    message: `This is a fault of the program, not of your art: ${told}. Please report it, with the artwork if you may share it.`,
  };
  return { ...(await reportLost(artwork, error, options)), fault };
}

/** Its bytes are read once more for their hash; what they say is not looked at. */
async function reportLost(
  artwork: PlannedArtwork,
  error: { readonly code: string; readonly message: string },
  { reader, request, view }: JudgeOptions,
): Promise<JudgedArtwork> {
  // What a slow disk, or standard input, gave once is not asked for again.
  const isAgain = error.code !== 'too-slow' && artwork.origin.kind !== 'stdin';
  const bytes = isAgain ? await reader.read(artwork).catch(() => null) : null;
  return {
    report: tellInsteadOf(
      reportUnreadable({ path: artwork.path, bytes }, error, request),
      namesBeside(artwork, artwork.formats),
    ),
    view: view ? viewBareBlank(request) : null,
  };
}
