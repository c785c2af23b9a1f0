import { dirname, resolve } from 'node:path';
import { BlankcheckError, type Summary, summarise, toResultJsonLine } from '../../src/index.ts';
import { type GoingOn, goOn } from '../again/go-on.ts';
import type { TypedOptions } from '../arguments.ts';
import { printError } from '../errors.ts';
import { exitCodeOf } from '../exit-code.ts';
import { missingArtwork } from '../inputs/missing-artwork.ts';
import { narrowPlan } from '../inputs/narrow-plan.ts';
import { planInputs } from '../inputs/plan-inputs.ts';
import type { Origin } from '../inputs/planned-artwork.ts';
import { listGivenOnce } from '../inputs/read-named-file.ts';
import { interruptionOf } from '../interrupt.ts';
import type { Io } from '../io.ts';
import { createOutFolders, type OutFolders } from '../output/out-folders.ts';
import { refuseSameOutputs } from '../output/refuse-same-outputs.ts';
import type { TempFiles } from '../output/temp-files.ts';
import { choosePoolSize } from '../pool/pool-size.ts';
import { createProgress } from '../progress.ts';
import { isScreen } from '../terminal.ts';
import { chooseJudge } from './choose-judge.ts';
import { type JudgedRun, judgeAll, placeInputs } from './judge-all.ts';
import type { JudgeOptions } from './judge-artwork.ts';
import { publishDocuments } from './publish-documents.ts';
import { readJudging } from './read-judging.ts';
import { tellEnd, tellPeople, tellPrograms, tellUnchanged } from './tell-run.ts';

/**
 * `prepare` and `check`: judges the artworks that the words stand for, tells people on standard error and programs on
 * standard output. Returns the exit code. @throws BlankcheckError of kind `usage`, before anything was read.
 */
export async function judgeArtworks(
  command: 'prepare' | 'check',
  words: readonly string[],
  options: TypedOptions,
  outside: Io,
  temps: TempFiles,
): Promise<number> {
  return (await judgeWanted(command, words, options, outside, temps, null)).exitCode;
}

/**
 * The same of these files only, named as if all were judged: of two that would share a name neither takes the other's.
 * Folders that hold none of them are no error, and JSON lines end without a summary.
 */
export async function judgePart(
  command: 'prepare' | 'check',
  words: readonly string[],
  options: TypedOptions,
  outside: Io,
  temps: TempFiles,
  files: ReadonlySet<string>,
  folders: OutFolders,
): Promise<Summary> {
  const { run } = await judgeWanted(command, words, options, outside, temps, files, folders);
  return summarise(run.results, run.passedOver);
}

async function judgeWanted(
  command: 'prepare' | 'check',
  words: readonly string[],
  options: TypedOptions,
  outside: Io,
  temps: TempFiles,
  files: ReadonlySet<string> | null,
  folders: OutFolders = createOutFolders(),
): Promise<{ readonly exitCode: number; readonly run: JudgedRun }> {
  refuseLoneMark(options);
  refuseTwoJsons(options);
  const progress = createProgress(outside.stderr, {
    quiet: options.quiet === true,
    isScreen: isScreen(outside.stderr, outside.env),
  });
  const io: Io = { ...outside, stderr: progress.stderr };
  const ended = new AbortController();
  const signal = AbortSignal.any([io.interrupt, ended.signal]);
  let origins: readonly Origin[] = [];
  const judging = await readJudging(
    command,
    options,
    { ...io, interrupt: signal },
    temps,
    () => origins,
    folders,
  );
  const size = choosePoolSize(options);
  if (words.length === 0) {
    throw missingArtwork();
  }
  try {
    const all = await planInputs(words, {
      cwd: io.cwd,
      recursive: options.recursive === true,
      signal,
      looked: progress.looking,
    });
    const placed = placeInputs(
      all,
      {
        out: options.out,
        proof: options.proof,
        picture: options.dryRun ? undefined : options.picture,
        format: judging.format,
        dummy: judging.request.dummy,
      },
      judging.request.blank.id,
    );
    refuseSameOutputs(placed, options, judging);
    origins = placed.map(({ artwork: { origin } }) => origin);
    const plan = files === null ? all : narrowPlan(all, files, io.cwd);
    const wanted = new Set(plan.planned.flatMap(({ artworks }) => artworks));
    const found = placed.filter(({ artwork }) => wanted.has(artwork));
    const goingOn = await goOn(found, options, judging, progress.looking);
    const { inputs } = goingOn;
    await folders.begin(listFolders(goingOn, judging));
    progress.begin(inputs.length);
    const judge = chooseJudge(goingOn, judging, io, {
      setUp: {
        command,
        options,
        cwd: io.cwd,
        origins: origins.filter(({ kind }) => kind !== 'fault'),
        givenOnce: listGivenOnce(),
        folders: folders.list(),
      },
      size,
      started: ({ path }) => progress.started(path),
      done: async (artwork, report) => {
        progress.done();
        if (report === null) return;
        if (!goingOn.done.has(artwork)) await goingOn.note(artwork, report);
        // Nothing goes there where the exit code will be 2.
        if (options.jsonLines && plan.missing.length === 0) io.stdout.write(toResultJsonLine(report));
      },
    });
    const run = await judgeAll(plan, inputs, judge, signal, tellPeople(options, io, inputs.length));
    await goingOn.end();
    tellUnchanged(goingOn.done.size, options, io);
    const exitCode = await concludeRun(run, inputs.length, judging, options, io, files !== null);
    return { exitCode, run };
  } finally {
    progress.end();
    await folders.end();
    // Where the request cannot be met, what is under way is in vain.
    ended.abort(new Error('the run ended'));
  }
}

/** Makes the documents of the run, tells its end and returns its exit code. JSON lines of a part end without a summary. */
async function concludeRun(
  run: JudgedRun,
  artworks: number,
  judging: JudgeOptions,
  options: TypedOptions,
  io: Io,
  isPart: boolean,
): Promise<number> {
  // Of a part that is nothing but files of our own there is nothing to tell: a watch finds each that it wrote.
  if (!isPart || run.results.length > 0 || io.interrupt.aborted) tellEnd(run, artworks, options, io);
  const unmade = await publishDocuments(run, options, judging);
  for (const error of unmade) printError(io.stderr, error);
  const exitCode = exitCodeOf({
    results: run.results,
    failOn: options.failOn ?? 'error',
    usageErrors: run.usageErrors.length,
    faults: run.faults,
    interruptedBy: interruptionOf(io.interrupt),
    unmade: unmade.length,
  });
  if (exitCode !== 2 && !(isPart && options.jsonLines)) tellPrograms(run, options, io);
  return exitCode;
}

/** Where what is left to be done goes. */
function listFolders(
  { inputs, done }: GoingOn,
  { cwd, writes, proof, picture }: JudgeOptions,
): ReadonlySet<string> {
  const paths = inputs.flatMap(({ artwork, place: { outputs } }) =>
    outputs === undefined || done.has(artwork)
      ? []
      : [writes && outputs.printReady, proof && outputs.proof, picture && outputs.picture],
  );
  return new Set(paths.flatMap((path) => (path ? [dirname(resolve(cwd, path))] : [])));
}

function refuseTwoJsons({ json, jsonLines }: TypedOptions): void {
  if (json === true && jsonLines === true)
    throw new BlankcheckError('bad-option', 'Expected --json or --json-lines, received both.');
}

function refuseLoneMark({ proof, proofMark }: TypedOptions): void {
  if (proofMark === true && proof === undefined)
    throw new BlankcheckError(
      'bad-option',
      '--proof-mark marks a proof, and none is asked for.\nSay where proofs go, such as --proof proofs --proof-mark.',
    );
}
