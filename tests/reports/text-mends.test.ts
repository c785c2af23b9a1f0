import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { preflight } from '../../src/preflight.ts';
import type { ArtworkReport } from '../../src/reports/report.ts';
import { toRunReportJson } from '../../src/reports/run-report-json.ts';
import { summarise } from '../../src/reports/summary.ts';
import { renderTextReport } from '../../src/reports/text-report.ts';
import { VERSION } from '../../src/version.ts';
import { paintRgb } from '../checks/colour-jobs.ts';
import { PLATE } from '../checks/jobs.ts';
import { findSchemaFaults } from './report-schema.ts';

const page = { width: 100, colour: false } as const;

function encode(colour: readonly [number, number, number]): Promise<Uint8Array> {
  const { data } = paintRgb(600, 600, () => colour);
  return sharp(data, { raw: { width: 600, height: 600, channels: 3 } })
    .png()
    .toBuffer();
}

const documentOf = (report: ArtworkReport) =>
  JSON.parse(
    toRunReportJson({
      schemaVersion: 1,
      program: { name: 'blankcheck', version: VERSION },
      summary: summarise([report], 0),
      results: [report],
    }),
  );

describe('mends in the reports', () => {
  it('names the mend, how much it changed and what is gone; the steps begin with it', async () => {
    const { report } = await preflight(
      { path: 'fern.png', bytes: await encode([0, 255, 0]) },
      { blank: PLATE, widthMm: 50, mends: ['into-gamut'] },
    );
    expect(report.mends).toHaveLength(1);
    expect(findSchemaFaults(documentOf(report))).toEqual([]);
    const text = renderTextReport(report, { ...page, showPlan: true });
    expect(text).toContain('into-gamut: ');
    expect(text).toContain('gamut/out-of-gamut');
    expect(text).toContain('1. Mend');
  });

  it('says where there was nothing to mend, and is silent where nothing was asked for', async () => {
    const source = { path: 'soil.png', bytes: await encode([120, 95, 75]) };
    const asked = await preflight(source, { blank: PLATE, widthMm: 50, mends: ['into-gamut'] });
    expect(renderTextReport(asked.report, page)).toContain('nothing to mend');
    const plain = await preflight(source, { blank: PLATE, widthMm: 50 });
    expect(renderTextReport(plain.report, page)).not.toContain('Mend');
  });
});
