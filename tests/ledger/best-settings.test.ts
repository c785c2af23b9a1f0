import { describe, expect, it } from 'vitest';
import { findBestSettings } from '../../src/ledger/best-settings.ts';
import type { PressedRecipe, Pressing } from '../../src/ledger/pressing.ts';
import { makePressing } from './pressings.ts';

const HOT: PressedRecipe = { temperature: { value: 204, unit: 'C' }, timeS: 300, pressure: 'firm' };
const COOL: PressedRecipe = { temperature: { value: 196, unit: 'C' }, timeS: 300, pressure: 'firm' };

const best = (...changes: Partial<Pressing>[]) =>
  findBestSettings(
    changes.map((changed, index) => ({ line: index + 1, pressing: makePressing(changed) })),
    'tile-ceramic-8in',
  );

describe('the best settings of a blank', () => {
  it('are none where none was recorded for it, or none says how', () => {
    expect(best()).toBeNull();
    expect(best({ recipe: {} })).toBeNull();
    expect(best({ recipe: { pressure: 'firm' } })).toBeNull();
    expect(best({ blank: { id: 'mug-11oz' } })).toBeNull();
  });

  it('are those with the best mean, not those of one lucky piece', () => {
    const own = best(
      { recipe: HOT, result: 5 },
      { recipe: HOT, result: 1 },
      { recipe: COOL, result: 4, at: '2026-03-01' },
      { recipe: COOL, result: 5, at: '2026-03-02' },
      { recipe: COOL, result: 4, at: '2026-03-03' },
    );
    expect(own).toMatchObject({
      recorded: 5,
      best: { recipe: COOL, results: [4, 5, 4], example: { at: '2026-03-02' } },
    });
  });

  it('of equal means are those pressed more often, then those pressed last', () => {
    expect(
      best({ recipe: HOT, result: 4 }, { recipe: COOL, result: 4 }, { recipe: COOL, result: 4 }),
    ).toMatchObject({
      best: { recipe: COOL },
    });
    const [early, late] = ['2026-01-01', '2026-02-01'];
    expect(best({ recipe: HOT, at: late }, { recipe: COOL, at: early })).toMatchObject({
      best: { recipe: HOT },
    });
    expect(best({ recipe: HOT, at: early }, { recipe: COOL, at: late })).toMatchObject({
      best: { recipe: COOL },
    });
  });

  it.each([
    [[4], true],
    [[3], false],
    [[5, 3], true],
    [[5, 3, 3], false],
  ])('went well with results %j: %s', (results, well) =>
    expect(best(...results.map((result) => ({ recipe: HOT, result })))?.best !== null).toBe(well),
  );

  it('are the same in either unit, and go by the platen where it was measured', () => {
    // 400 F = 204.4 C, 399 F = 203.9 C: both are 204 C to the degree.
    const measured = { ...COOL, platenTemperature: { value: 399, unit: 'F' } } as const;
    expect(
      best(
        { recipe: HOT },
        { recipe: measured },
        { recipe: { ...HOT, temperature: { value: 400, unit: 'F' } } },
      ),
    ).toMatchObject({ best: { results: [4, 4, 4] } });
  });
});
