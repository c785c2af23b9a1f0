import { afterAll, describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/index.ts';
import { changeOf, MAX_SECONDS, TARGETS } from './targets.ts';

/** Mutations in all; `npm run fuzz` makes 10,000. */
const MUTATIONS = Number(process.env.FUZZ ?? 600);
const figures: Record<
  string,
  { readonly read: number; readonly refused: number; readonly slowestMs: number }
> = {};

describe('mutated input', () => {
  const each = Math.ceil(MUTATIONS / Object.keys(TARGETS).length);
  it.each(Object.entries(TARGETS))(
    '%s is read or refused, and never ends the program',
    async (name, target) => {
      const good = await target.make();
      await target.read(good);
      let [refused, slowestMs] = [0, 0];
      for (let seed = 1; seed <= each; seed += 1) {
        const began = performance.now();
        try {
          await target.read(changeOf(target)(good, seed));
        } catch (error) {
          if (!(error instanceof BlankcheckError)) throw new Error(`seed ${seed}`, { cause: error });
          refused += 1;
        }
        slowestMs = Math.max(slowestMs, Math.round(performance.now() - began));
      }
      figures[name] = { read: each - refused, refused, slowestMs };
      // The program gives up by itself; twice that is a hang.
      expect(slowestMs).toBeLessThan(2 * MAX_SECONDS * 1000);
    },
    3_600_000,
  );

  afterAll(() => {
    if (process.env.FUZZ) console.table(figures);
  });
});
