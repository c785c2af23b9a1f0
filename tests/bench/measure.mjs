import { spawnSync } from 'node:child_process';

/**
 * Runs every task once per round, in turn, so that a slow moment of the machine hits all of them alike.
 * Comes back with the median milliseconds of each, the first round left out as warm-up.
 */
export async function timeInTurn(tasks, rounds) {
  const times = Object.fromEntries(Object.keys(tasks).map((name) => [name, []]));
  for (let round = 0; round <= rounds; round += 1) {
    for (const [name, task] of Object.entries(tasks)) {
      const start = performance.now();
      await task();
      if (round > 0) times[name].push(performance.now() - start);
    }
  }
  return Object.fromEntries(Object.entries(times).map(([name, values]) => [name, median(values)]));
}

export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

/** Runs a node script as a process of its own; fails loudly when it fails. */
export function runNode(args) {
  const { status, stderr, stdout } = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}\n${stderr}`);
  return stdout;
}

/** One row of the table: a ratio and the limit it is held against, if it has one. */
export function row(name, value, limit, kind = 'at most') {
  if (limit === undefined) return { name, ratio: value.toFixed(2), limit: 'none', kept: '' };
  const kept = kind === 'at most' ? value <= limit : value >= limit;
  return { name, ratio: value.toFixed(2), limit: `${kind} ${limit}`, kept: kept ? 'yes' : 'NO' };
}
