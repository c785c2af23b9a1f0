import { describe, expect, it } from 'vitest';
import { blankFromSize } from '../../src/job/blank-from-size.ts';
import { preflight } from '../../src/preflight.ts';
import { readPrinter } from '../../src/printers/read-printer.ts';
import { toRunReportJson } from '../../src/reports/run-report-json.ts';
import { summarise } from '../../src/reports/summary.ts';
import { renderTextReport } from '../../src/reports/text-report.ts';
import { VERSION } from '../../src/version.ts';
import { makeArt } from '../cli/art.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { PLAIN_PRINTER, SHED_PRINTER } from './printer-texts.ts';

const blank = blankFromSize('40x40mm');
const art = { path: 'pear.png', bytes: makeArt() };

async function judged(request: object) {
  return preflight(art, { blank, widthMm: 2, ...request }, { write: true });
}

describe('a printer in a job', () => {
  it.each([
    ['first', false, true],
    ['first', true, false],
    ['second', false, false],
    ['second', true, true],
  ] as const)(
    'counts mirroring once: surface %s, driver mirrors %s',
    async (surface, driverMirrors, mirrored) => {
      const printer = { ...(await readPrinter(PLAIN_PRINTER, 'stall')), driverMirrors };
      const { report, printReady } = await judged({ surface, printer });
      expect(printReady?.plan.mirrored).toBe(mirrored);
      expect(report.plan.filter(({ step }) => step === 'mirror')).toHaveLength(mirrored ? 1 : 0);
      // Law: what the file and the driver reverse together is what the surface asks for.
      expect(mirrored !== driverMirrors).toBe(surface === 'first');
    },
  );

  it.each([
    ['the maker wins', { ppi: 200, blank: { ...blank, ppi: 150 } }, SHED_PRINTER, 200],
    ['then the printer', { blank: { ...blank, ppi: 150 } }, SHED_PRINTER, 360],
    ['then the blank', { blank: { ...blank, ppi: 150 } }, PLAIN_PRINTER, 150],
    ['then 300', {}, PLAIN_PRINTER, 300],
  ])('decides on the ppi: %s', async (_, request, text, ppi) => {
    const { printReady } = await judged({ ...request, printer: await readPrinter(text, 'a') });
    expect(printReady?.plan.ppi).toBe(ppi);
  });

  it('keeps the size of the piece whatever the correction, and says so', async () => {
    const plain = await judged({ ppi: 300 });
    const printer = await readPrinter(SHED_PRINTER, 'shed');
    const corrected = await judged({ ppi: 300, printer: { ...printer, driverMirrors: false } });
    expect(corrected.printReady?.bytes).toEqual(plain.printReady?.bytes);
    const { widthPx, heightPx, widthMm, heightMm, ppi, mirrored } = corrected.printReady!.plan;
    const output = { path: 'a.png', widthPx, heightPx, widthMm, heightMm, ppi, mirrored };
    const text = renderTextReport({ ...corrected.report, output }, { width: 200, colour: false });
    expect(text).toContain('1.004');
    expect(renderTextReport({ ...plain.report, output }, { width: 200, colour: false })).not.toContain(
      '1.004',
    );
  });

  it('stands in the report, which fulfils its schema', async () => {
    const printer = await readPrinter(SHED_PRINTER, 'shed');
    const { report } = await judged({ printer });
    const json = toRunReportJson({
      schemaVersion: 1,
      program: { name: 'blankcheck', version: VERSION },
      summary: summarise([report], 0),
      results: [report],
    });
    const document = JSON.parse(json);
    expect(document.results[0].printer).toEqual({
      name: 'Potting shed',
      driverMirrors: true,
      scaleCorrection: { scan: 1, feed: 1.004 },
    });
    expect(findSchemaFaults(document)).toEqual([]);
  });
});
