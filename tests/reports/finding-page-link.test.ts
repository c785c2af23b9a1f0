import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/checks/index.ts';
import { toResultJsonLine } from '../../src/reports/run-report-json.ts';
import { CLEAN } from './nasty-findings.ts';

const CODES = CHECKS.flatMap(({ id, codes }) => Object.keys(codes).map((code) => [id, code] as const));

function findingOf(check: string, code: string) {
  const findings = [{ code, severity: 'warning' as const, facts: {} }];
  const stub = CHECKS.map(({ id, codes, phrases }) => ({
    id,
    codes,
    phrases: Object.fromEntries(Object.keys(phrases).map((key) => [key, () => 'Words.'])),
  }));
  const report = { ...CLEAN, outcomes: [{ check, status: 'found' as const, findings }] };
  return JSON.parse(toResultJsonLine(report, stub as never)).outcomes[0].findings[0];
}

/** The anchor that Markdown readers give a heading of one code word: the word itself. */
const anchorsOf = (page: string) => [...page.matchAll(/^## `([a-z0-9-]+)`$/gm)].map(([, word]) => word);

describe('the page that a finding names', () => {
  it.each(CODES)('%s/%s is there, with its heading', (check, code) => {
    const [file, anchor] = findingOf(check, code).page.split('#');
    expect(anchor).toBe(code);
    expect(anchorsOf(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8'))).toContain(anchor);
  });

  it('is left out where the package has none', () => {
    expect(findingOf('somebody-elses', 'code').page).toBeUndefined();
    expect(findingOf('bleed-cover', 'no-such-code').page).toBeUndefined();
  });
});
