import { type ChildProcess, fork } from 'node:child_process';
import type { Answer, FromChild, JudgeThis, SetUp } from './messages.ts';

/** How one artwork in a child ended: with an answer, or with the child. */
export type Ending =
  | Answer
  | { readonly kind: 'crashed'; readonly by: string }
  | { readonly kind: 'too-slow' };

/** A warm process that judges one artwork after another. */
export interface Child {
  /** undefined where the system gave none. */
  readonly pid: number | undefined;
  /** False once it has ended, or been ended. */
  readonly alive: boolean;
  /** Memory that it held after its last artwork. */
  readonly residentBytes: number;
  /** Judges one artwork; ends the process when that takes more than `maxSeconds`. @throws where it never came up */
  judge(job: Omit<JudgeThis, 'kind'>, maxSeconds: number): Promise<Ending>;
  /** Interrupts what it does; ends the process when that does not help within the grace. */
  stop(): void;
  /** Ends the process now, and waits for its end. */
  kill(): Promise<void>;
}

const STOP_GRACE_MS = 3000;

/** Starts a child; it comes up while the first artwork is chosen. */
export function startChild(program: string, setUp: Omit<SetUp, 'kind'>): Child {
  const child = fork(program, [], {
    serialization: 'advanced',
    // Nothing that a native library says may end up in the report.
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  });
  const state = { alive: true, ready: false, residentBytes: 0 };
  let settle: (ending: Ending) => void = () => undefined;
  const end = (ending: Ending) => {
    state.alive = false;
    settle(ending);
  };
  child.on('message', (message: FromChild) => {
    if (message.kind === 'ready') state.ready = true;
    else {
      state.residentBytes = message.residentBytes;
      settle(message.answer);
    }
  });
  const ended = new Promise<void>((resolve) => {
    child.on('exit', (code, signal) => {
      end({ kind: 'crashed', by: signal ?? `exit code ${code}` });
      resolve();
    });
    child.on('error', (error) => {
      end({ kind: 'crashed', by: error.message });
      resolve();
    });
  });
  send(child, { kind: 'set-up', ...setUp });
  return {
    pid: child.pid,
    get alive() {
      return state.alive;
    },
    get residentBytes() {
      return state.residentBytes;
    },
    async judge(job, maxSeconds) {
      const ending = await new Promise<Ending>((resolve) => {
        const late = setTimeout(() => {
          child.kill('SIGKILL');
          end({ kind: 'too-slow' });
        }, maxSeconds * 1000);
        settle = (how) => {
          clearTimeout(late);
          resolve(how);
        };
        if (state.alive) send(child, { kind: 'judge', ...job });
        else settle({ kind: 'crashed', by: 'its end' });
      });
      if (ending.kind === 'crashed' && !state.ready)
        throw new Error(`a process to judge artworks in did not start: ${ending.by}`);
      return ending;
    },
    stop() {
      send(child, { kind: 'stop' });
      setTimeout(() => child.kill('SIGKILL'), STOP_GRACE_MS).unref();
    },
    kill() {
      state.alive = false;
      child.kill('SIGKILL');
      return ended;
    },
  };
}

function send(child: ChildProcess, message: SetUp | JudgeThis | { readonly kind: 'stop' }): void {
  // One that is gone is noticed by its exit.
  if (child.connected) child.send(message, () => undefined);
}
