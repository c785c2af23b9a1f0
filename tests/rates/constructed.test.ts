import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/checks/index.ts';
import { CASE_LISTS } from './case-lists.ts';
import { type ConstructedRate, countConstructed, findsCode } from './count-constructed.ts';
import { renderConstructed } from './render-rates.ts';

const path = new URL('constructed.md', import.meta.url);
// All cases take minutes: RATES=1 looks at them and renews the table; else every so many are held against it.
const whole = process.env.RATES === '1';
const SAMPLE_EVERY = 8;

describe.runIf(whole)('rates on made pictures', () => {
  const rates: ConstructedRate[] = [];

  it.each(Object.keys(CASE_LISTS))(
    '%s misses at most one fault in ten where it warns',
    { timeout: 3_600_000 },
    async (check) => {
      const own = await countConstructed(check, CASE_LISTS[check]!);
      rates.push(...own);
      // What cannot keep to this is advice, and the table says what it misses.
      for (const { code, severities, missed, faults } of own)
        if (severities.some((severity) => severity !== 'advice'))
          expect(missed.length / faults, code).toBeLessThanOrEqual(0.1);
    },
  );

  it('are those of the table in the tree', () => {
    const text = renderConstructed(rates);
    if (process.env.UPDATE === '1') writeFileSync(path, text);
    expect(text).toBe(readFileSync(path, 'utf8'));
  });
});

describe.skipIf(whole)('a sample of the made pictures comes out as the table says', () => {
  const text = readFileSync(path, 'utf8');
  const sample = Object.entries(CASE_LISTS).flatMap(([id, cases]) =>
    cases.filter((_, i) => i % SAMPLE_EVERY === 0).map((one) => ({ id, one, name: one.name })),
  );

  it.each(sample)('$id: $name', async ({ id, one }) => {
    const isWrong = text.includes(
      `- ${id}/${one.code} ${one.fault ? 'missed' : 'falsely found'}: ${one.name}\n`,
    );
    const check = CHECKS.find((candidate) => candidate.id === id)!;
    expect(await findsCode(check, one)).toBe(one.fault !== isWrong);
  });
});
