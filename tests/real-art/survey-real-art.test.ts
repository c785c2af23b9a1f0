import { execFile } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';
import { requireCorpus, requireWitness } from '../witness.ts';

const script = join(dirname(fileURLToPath(import.meta.url)), 'survey-real-art.mjs');

/** The folder is of this machine, so it comes from outside: see survey-real-art.mjs for packages that have one. */
it('finds the same content box as ImageMagick on every PNG of an art package', async (context) => {
  const folder = process.env.BLANKCHECK_REAL_ART;
  if (folder === undefined) return context.skip('BLANKCHECK_REAL_ART names no folder of real art');
  requireWitness(context, 'convert');
  requireCorpus(context, folder, '.png');
  const env = { BLANKCHECK_REAL_ART_COUNT: '400', ...process.env };
  const { stdout } = await promisify(execFile)(process.execPath, [script], { env, maxBuffer: 1 << 26 });
  const { files, sameBox, differing, broken, refused, unwitnessed } = JSON.parse(stdout);
  expect({ differing, broken }).toEqual({ differing: [], broken: [] });
  expect(sameBox + refused.length + unwitnessed.length).toBe(files);
  expect(sameBox).toBeGreaterThan(files * 0.95);
}, 600_000);
