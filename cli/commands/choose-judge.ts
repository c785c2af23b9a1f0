import type { GoingOn } from '../again/go-on.ts';
import type { Io } from '../io.ts';
import { judgeHere, judgeInPool, type PooledRun } from '../pool/judge-in-pool.ts';
import type { Judge } from './judge-all.ts';
import type { JudgeOptions } from './judge-artwork.ts';

/**
 * What is unchanged is as it was. Several artworks are judged in processes of their own; for one alone that would cost time
 * and protect nothing.
 */
export function chooseJudge(
  { inputs, done }: GoingOn,
  judging: JudgeOptions,
  { childProgram: program }: Io,
  run: Omit<PooledRun, 'program'>,
): Judge {
  const left = inputs.filter(({ artwork }) => !done.has(artwork));
  const isSeveral = left.filter(({ artwork: { origin } }) => origin.kind !== 'fault').length > 1;
  const judge =
    program !== undefined && isSeveral
      ? judgeInPool(left, { ...run, program }, judging)
      : judgeHere(run, judging);
  return async (artwork, place) => {
    const before = done.get(artwork);
    if (before === undefined) return judge(artwork, place);
    await run.done(artwork, before);
    return { report: before, view: null };
  };
}
