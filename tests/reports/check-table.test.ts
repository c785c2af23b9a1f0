import { describe, expect, it } from 'vitest';
import { renderCheckTable } from '../../src/reports/check-table.ts';
import { STAND_IN_CHECKS } from './nasty-findings.ts';

const rows = renderCheckTable(STAND_IN_CHECKS).trimEnd().split('\n');

describe('table of checks', () => {
  it('has a head, a rule and a row per check, in their order', () => {
    expect(rows).toHaveLength(2 + STAND_IN_CHECKS.length);
    const ids = rows.slice(2).map((row) => /`([a-z-]+)`/.exec(row)?.[1]);
    expect(ids).toEqual(STAND_IN_CHECKS.map(({ id }) => id));
  });

  it('has as many cells in every row as in its head, whatever bars a text holds', () => {
    const cellsOf = (row: string) => row.split(/(?<!\\)\|/).length;
    expect(new Set(rows.map(cellsOf))).toEqual(new Set([cellsOf(rows[0]!)]));
    expect(rows[2]).toContain('goes wrong \\| where');
  });

  it('names every code with its severities', () => {
    expect(rows[2]).toContain('`below-stop` (error or warning)<br>`below-good` (error or warning)');
  });

  it('lets no text begin HTML', () => {
    expect(rows[2]).toContain('finds something \\<on the blank>.');
  });
});
