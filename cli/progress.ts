import type { TextStream } from './io.ts';
import { drawProgress } from './progress-line.ts';

/** How far a run has come, told while it goes on. */
export interface Progress {
  /** Standard error for everything else that is told: the bar makes room for it. */
  readonly stderr: TextStream;
  /** So many artworks have been found so far, while folders are looked through. */
  looking(found: number): void;
  /** Looking is over, and there are so many. */
  begin(total: number): void;
  started(path: string): void;
  done(): void;
  /** Takes the bar away. */
  end(): void;
}

export interface ProgressOptions {
  readonly quiet: boolean;
  /** A bar that is drawn anew, or plain lines. */
  readonly isScreen: boolean;
  readonly nowMs?: () => number;
}

/** Often enough to be seen moving. */
const REDRAW_MS = 100;
/** Seldom enough for a log; a run that is shorter than that says nothing of it. */
const LINE_MS = 10_000;
const CLEAR_LINE = '\r\x1b[2K';

export function createProgress(
  stderr: TextStream,
  { quiet, isScreen, nowMs = () => performance.now() }: ProgressOptions,
): Progress {
  const state = { found: 0, total: 0, done: 0, current: '', beganMs: nowMs(), toldMs: nowMs(), drawn: false };
  const clear = () => {
    if (state.drawn) stderr.write(CLEAR_LINE);
    state.drawn = false;
  };
  const tell = () => {
    const now = nowMs();
    if (quiet || now - state.toldMs < (isScreen ? REDRAW_MS : LINE_MS)) return;
    state.toldMs = now;
    const told = state.total === 0 ? [tellLooking(state.found)] : tellHow(state, now - state.beganMs);
    if (!isScreen) stderr.write(`blankcheck: ${told.join(', ')}\n`);
    else {
      stderr.write(`${CLEAR_LINE}${drawProgress(told, state, (stderr.columns || 80) - 1)}`);
      state.drawn = true;
    }
  };
  return {
    stderr: {
      isTTY: stderr.isTTY,
      get columns() {
        return stderr.columns;
      },
      write(text) {
        clear();
        stderr.write(text);
      },
    },
    looking(found) {
      state.found = found;
      tell();
    },
    begin(total) {
      state.total = total;
      state.beganMs = nowMs();
      // Of one alone there is nothing to tell but its report.
      if (total > 1) tell();
    },
    started(path) {
      state.current = path;
      tell();
    },
    done() {
      state.done += 1;
      if (state.total > 1) tell();
    },
    end: clear,
  };
}

function tellLooking(found: number): string {
  return `looking for artworks: ${found} so far`;
}

/** The most important first. */
function tellHow(
  { done, total }: { readonly done: number; readonly total: number },
  ms: number,
): readonly string[] {
  if (done === 0 || ms <= 0) return [`0 of ${total}`];
  const rate = (done / ms) * 1000;
  const left = done === total ? [] : [`${tellSeconds((total - done) / rate)} left`];
  return [`${done} of ${total}`, `${rate < 10 ? rate.toFixed(1) : Math.round(rate)} a second`, ...left];
}

function tellSeconds(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
}
