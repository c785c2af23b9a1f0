import { expect, it } from 'vitest';
import type { ArtworkReport } from '../../src/reports/report.ts';
import { tellPrinting } from '../../src/reports/text-file.ts';
import { renderPrintingAdvice } from '../../src/reports/text-printing.ts';
import { CLEAN } from './nasty-findings.ts';

const PAGE = { colour: false, width: 500 } as const;
const WRITTEN: ArtworkReport = CLEAN;
const output = WRITTEN.output!;
/** Lines without their wrapping. */
const linesOf = (text: string) => text.replaceAll('\n    ', ' ').split('\n');

it('tells once what holds for every file of a run', () => {
  const told = linesOf(renderPrintingAdvice([WRITTEN, { ...WRITTEN, output: null }, WRITTEN], PAGE));
  expect(told).toEqual([
    'How to print them',
    ...tellPrinting(output, WRITTEN).map((line) => `  - ${line}`),
    '',
  ]);
});

it('leaves out what differs from file to file', () => {
  const other = { ...WRITTEN, output: { ...output, mirrored: !output.mirrored } };
  const [one, two] = [tellPrinting(output, WRITTEN), tellPrinting(other.output, other)];
  const shared = one.filter((line) => two.includes(line));
  expect(shared.length).toBe(one.length - 1);
  expect(linesOf(renderPrintingAdvice([WRITTEN, other], PAGE)).slice(1, -1)).toEqual(
    shared.map((line) => `  - ${line}`),
  );
});

it('is nothing where nothing was written', () => {
  expect(renderPrintingAdvice([{ ...WRITTEN, output: null }], PAGE)).toBe('');
  expect(renderPrintingAdvice([], PAGE)).toBe('');
});
