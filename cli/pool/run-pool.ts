import type { PlacedInput } from '../commands/judge-all.ts';
import { type Child, type Ending, startChild } from './child-process.ts';
import { findMemoryNeed, weighFile } from './memory-need.ts';
import type { SetUp } from './messages.ts';
import { IDLE_BYTES, type PoolSize } from './pool-size.ts';

export interface PoolOptions {
  readonly program: string;
  readonly setUp: Omit<SetUp, 'kind'>;
  readonly size: PoolSize;
  readonly maxSeconds: number;
  readonly signal: AbortSignal;
  /** Told of every child with each artwork that it is given, and of its end, so that what it leaves behind is found. */
  readonly handed: (input: PlacedInput, pid: number) => void;
  readonly ended: (pid: number) => void;
}

interface Waiting {
  readonly input: PlacedInput;
  readonly fileBytes: number;
  readonly settle: (ending: Promise<Ending>) => void;
  needBytes?: number;
}

/** How many of the waiting are asked for one that fits beside those under way. */
const LOOK_AHEAD = 32;

/**
 * Judges artworks in processes of their own, larger files first, as many at once as the size allows: what they need
 * together stays within its memory, and one that needs more than all of it is judged alone. Gives a promise each, in the
 * order of the inputs. When the signal is aborted, none is started any more, and those under way are interrupted.
 */
export function runPool(
  inputs: readonly PlacedInput[],
  options: PoolOptions,
): ReadonlyMap<PlacedInput, Promise<Ending>> {
  const waiting: Omit<Waiting, 'fileBytes'>[] = [];
  const endings = new Map(
    inputs.map((input) => [input, new Promise<Ending>((settle) => waiting.push({ input, settle }))] as const),
  );
  // Whoever waits for one of them is told.
  for (const ending of endings.values()) ending.catch(() => undefined);
  sortLargestFirst(waiting)
    .then((sorted) => runLanes(sorted, options))
    // A fault of ours must end the run, not leave it waiting.
    .catch((error: unknown) => {
      for (const { settle } of waiting) settle(Promise.reject(error));
    });
  return endings;
}

/** The entries of an archive have its size, so that they stay together and it is opened once by each child. */
async function sortLargestFirst(waiting: readonly Omit<Waiting, 'fileBytes'>[]): Promise<Waiting[]> {
  const sizes = new Map<string, Promise<number>>();
  const weighed = waiting.map(async (one) => {
    const { origin } = one.input.artwork;
    const file = origin.kind === 'file' ? origin.file : origin.kind === 'entry' ? origin.archive : '';
    if (!sizes.has(file)) sizes.set(file, weighFile(file));
    return { ...one, fileBytes: await sizes.get(file)! };
  });
  return (await Promise.all(weighed)).sort((a, b) => b.fileBytes - a.fileBytes);
}

async function runLanes(waiting: Waiting[], options: PoolOptions): Promise<void> {
  const room = createRoom(waiting, options.size.memoryBytes);
  const lanes = Math.min(options.size.jobs, waiting.length);
  await Promise.all(Array.from({ length: lanes }, () => runLane(room, options)));
}

interface Room {
  /** The next artwork that fits, with its need taken; null when none is left. Waits while none fits. */
  take(): Promise<Waiting | null>;
  giveBack(one: Waiting): void;
}

function createRoom(waiting: Waiting[], memoryBytes: number): Room {
  let usedBytes = 0;
  // Counted, since sums of bytes with fractions do not come back to 0.
  let underWay = 0;
  let turn: Promise<unknown> = Promise.resolve();
  let wake: () => void = () => undefined;
  const fits = async (one: Waiting): Promise<boolean> => {
    one.needBytes ??= await findMemoryNeed(one.input.artwork, one.fileBytes);
    return underWay === 0 || usedBytes + one.needBytes <= memoryBytes;
  };
  const takeOne = async (): Promise<Waiting | null> => {
    while (waiting.length > 0) {
      const freed = new Promise<void>((resolve) => {
        wake = resolve;
      });
      for (let index = 0; index < Math.min(waiting.length, LOOK_AHEAD); index += 1) {
        const one = waiting[index]!;
        if (!(await fits(one))) continue;
        waiting.splice(index, 1);
        usedBytes += one.needBytes!;
        underWay += 1;
        return one;
      }
      await freed;
    }
    return null;
  };
  return {
    take() {
      const taken = turn.then(takeOne);
      turn = taken;
      return taken;
    },
    giveBack({ needBytes }) {
      usedBytes -= needBytes!;
      underWay -= 1;
      wake();
    },
  };
}

async function runLane(room: Room, options: PoolOptions): Promise<void> {
  const { program, setUp, size, maxSeconds, signal, handed, ended } = options;
  let child: Child | null = null;
  const stop = () => child?.stop();
  const bury = async (): Promise<void> => {
    if (child === null) return;
    await child.kill();
    if (child.pid !== undefined) ended(child.pid);
    child = null;
  };
  signal.addEventListener('abort', stop);
  for (let one = await room.take(); one !== null; one = await room.take()) {
    if (signal.aborted) one.settle(Promise.resolve({ kind: 'interrupted' }));
    else {
      child ??= startChild(program, setUp);
      if (child.pid !== undefined) handed(one.input, child.pid);
      const ending = child.judge(one.input, maxSeconds);
      await ending.catch(() => undefined);
      if (!child.alive || holdsTooMuch(child, size)) await bury();
      one.settle(signal.aborted ? ending.then(asInterrupted) : ending);
    }
    room.giveBack(one);
  }
  signal.removeEventListener('abort', stop);
  await bury();
}

/** A process that would not stop was ended by the run itself: that says nothing of its artwork. */
function asInterrupted(ending: Ending): Ending {
  return ending.kind === 'crashed' || ending.kind === 'too-slow' ? { kind: 'interrupted' } : ending;
}

/** What a large picture took, the C library seldom gives back: a fresh process costs less than the room. */
function holdsTooMuch({ residentBytes }: Child, { memoryBytes, jobs }: PoolSize): boolean {
  return residentBytes > Math.max(memoryBytes / (2 * jobs), 3 * IDLE_BYTES);
}
