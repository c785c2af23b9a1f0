import { createHash } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { TypedOptions } from '../arguments.ts';
import type { JudgeOptions } from '../commands/judge-artwork.ts';

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
/** Options that may name a file, whose content counts. */
const FILES = ['blank', 'printer', 'condition', 'printerProfile'] as const;

/** null for what is no file: a pipe was read already, and has nothing more to give. */
async function readRegular(path: string): Promise<Uint8Array | null> {
  const isFile = await stat(path).then(
    (stats) => stats.isFile(),
    () => false,
  );
  return isFile ? readFile(path).catch(() => null) : null;
}

/** Hex SHA-256 of all that decides what becomes of an artwork besides its own bytes. */
export async function hashOptions(
  options: TypedOptions,
  { request, format, cwd }: Pick<JudgeOptions, 'request' | 'format' | 'cwd'>,
): Promise<string> {
  const effective = Object.entries(options)
    .filter(([name]) => !WITHOUT_EFFECT.has(name))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const contents = await Promise.all(
    FILES.map(async (name) => {
      const word = options[name];
      const bytes = word === undefined ? null : await readRegular(resolve(cwd, word));
      return bytes && createHash('sha256').update(bytes).digest('hex');
    }),
  );
  // The profile that a printer's record names is known only once that was read.
  const conversion = request.conversion?.sha256 ?? null;
  return createHash('sha256')
    .update(JSON.stringify([effective, contents, conversion, format]))
    .digest('hex');
}
