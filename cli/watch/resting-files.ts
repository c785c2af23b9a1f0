/** How a file looked at one moment. */
export interface FileState {
  readonly bytes: number;
  readonly mtimeMs: number;
}

/** So long size and time must stand still: browsers and shares write in bursts. By the contract. */
export const REST_MS = 2000;

/** Tells which files have come to rest since they were last told. */
export interface RestingFiles {
  /** Takes what is there now, and gives what rests and was not given in this state before, in code units. */
  look(now: ReadonlyMap<string, FileState>, nowMs: number): readonly string[];
}

export function createRestingFiles(): RestingFiles {
  const seen = new Map<string, FileState & { readonly sinceMs: number; given: boolean }>();
  return {
    look(now, nowMs) {
      for (const path of seen.keys()) if (!now.has(path)) seen.delete(path);
      const rested: string[] = [];
      for (const [path, { bytes, mtimeMs }] of now) {
        const before = seen.get(path);
        if (before?.bytes !== bytes || before.mtimeMs !== mtimeMs) {
          seen.set(path, { bytes, mtimeMs, sinceMs: nowMs, given: false });
        } else if (!before.given && nowMs - before.sinceMs >= REST_MS) {
          before.given = true;
          rested.push(path);
        }
      }
      return rested.sort();
    },
  };
}
