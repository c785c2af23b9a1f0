import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { listConditionIds, MAX_CONDITION_BYTES } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { JudgeOptions } from '../commands/judge-artwork.ts';
import { readNamedFile } from '../inputs/read-named-file.ts';

const NEVER = new AbortController().signal;

/** Options that change what is told or how it is done, and nothing that is judged or written. */
const WITHOUT_EFFECT: ReadonlySet<string> = new Set<keyof TypedOptions>([
  'ask',
  'out',
  'force',
  'recursive',
  'fresh',
  'watch',
  'jobs',
  'memory',
  'json',
  'jsonLines',
  'csv',
  'report',
  'failOn',
  'quiet',
  'pause',
  'colour',
  'color',
]);
/**
 * Hex SHA-256 of all that decides what becomes of an artwork besides its own bytes: the options, and what the records
 * and profiles that they name say, as this run read them, be it from a file or from a pipe.
 */
export async function hashOptions(
  options: TypedOptions,
  { request, format, cwd }: Pick<JudgeOptions, 'request' | 'format' | 'cwd'>,
): Promise<string> {
  const effective = Object.entries(options)
    .filter(([name]) => !WITHOUT_EFFECT.has(name))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  // A profile is compared by its bytes: what is made of them holds tables and no names for them.
  const { condition, conversion, ...read } = request;
  const profiles = [condition && (await hashCondition(options.condition, cwd)), conversion?.sha256];
  return createHash('sha256')
    .update(JSON.stringify([effective, read, profiles, format]))
    .digest('hex');
}

/** null for one that ships with the program, which the seeds tell apart. */
async function hashCondition(word: string | undefined, cwd: string): Promise<string | null> {
  if (word === undefined || listConditionIds().includes(word)) return null;
  const bytes = await readNamedFile(resolve(cwd, word), NEVER, MAX_CONDITION_BYTES);
  return createHash('sha256').update(bytes).digest('hex');
}
