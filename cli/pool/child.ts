import { BlankcheckError } from '../../src/index.ts';
import { type JudgeOptions, judgeArtwork } from '../commands/judge-artwork.ts';
import { readJudging } from '../commands/read-judging.ts';
import { takeOverGivenOnce } from '../inputs/read-named-file.ts';
import { createOutFolders } from '../output/out-folders.ts';
import { createTempFiles } from '../output/temp-files.ts';
import type { Answer, FromChild, JudgeThis, SetUp, ToChild } from './messages.ts';

// A process of the pool: judges one artwork after another, so that one that ends it costs no other.
const temps = createTempFiles();
const stopped = new AbortController();
let judging: Promise<JudgeOptions> | null = null;

// The terminal interrupts children too; what is to be done then the run says.
for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(name, () => undefined);
process.on('disconnect', () => {
  temps.removeAllNow();
  // Not process.exit, which would wait for a file that never opens.
  process.kill(process.pid, 'SIGKILL');
});
process.on('message', (message: ToChild) => {
  switch (message.kind) {
    case 'set-up':
      judging = setUp(message);
      judging.catch(() => undefined);
      tell({ kind: 'ready' });
      break;
    case 'judge':
      void judge(message).then((answer) =>
        tell({ kind: 'answer', answer, residentBytes: process.memoryUsage.rss() }),
      );
      break;
    case 'stop':
      stopped.abort(new Error('stopped'));
      break;
  }
});

function tell(message: FromChild): void {
  // A run that went away is told nothing more.
  process.send?.(message, undefined, undefined, () => undefined);
}

function setUp({ command, options, cwd, origins, givenOnce, folders }: SetUp): Promise<JudgeOptions> {
  takeOverGivenOnce(givenOnce);
  const noInput = { isTTY: false, stop: () => undefined, async *[Symbol.asyncIterator]() {} };
  return readJudging(
    command,
    options,
    { cwd, stdin: noInput, interrupt: stopped.signal },
    temps,
    origins,
    createOutFolders(folders),
  );
}

async function judge({ artwork, place }: JudgeThis): Promise<Answer> {
  try {
    stopped.signal.throwIfAborted();
    if (judging === null) throw new Error('asked before it was set up');
    return { kind: 'judged', judged: await judgeArtwork(artwork, place, await judging) };
  } catch (error) {
    if (stopped.signal.aborted) return { kind: 'interrupted' };
    if (error instanceof BlankcheckError && error.kind === 'usage')
      return { kind: 'refused', code: error.code, message: error.message };
    const { name, message } = error instanceof Error ? error : new Error(String(error));
    return { kind: 'fault', name, message };
  }
}
