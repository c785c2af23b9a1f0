import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { makeProofTable } from '../../src/icc/proof-table.ts';
import { readProfile } from '../../src/icc/read-profile.ts';
import { blankFromSize, preflight, readPrinterProfile, readPrintRecord } from '../../src/index.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { COUNT, cmykArt, codesOf, P3, PPI, prepare, RGB_PRINTER, rgbArt, WAY } from './jobs.ts';

describe('beside the file', () => {
  it('the proof shows what the printer makes of the art’s own colours, not of clipped ones', async () => {
    const samples = Array.from({ length: COUNT }, () => [0, 255, 0]).flat();
    const { proof } = await prepare(rgbArt(P3, samples), COATED_REFERENCE, { proof: true });
    const table = makeProofTable(readProfile(COATED_REFERENCE), readProfile(P3));
    const wanted = table.convert([0, 1, 0]).map((value) => Math.round(value * 255));
    const { data, info } = await sharp(proof!.bytes).raw().toBuffer({ resolveWithObject: true });
    const middle = (info.width >> 1) + info.width * Math.round(((3 + 10) / 25.4) * PPI);
    const seen = [...data.subarray(middle * info.channels, middle * info.channels + 3)];
    for (const k of [0, 1, 2]) expect(Math.abs(seen[k]! - wanted[k]!)).toBeLessThanOrEqual(2);
  });

  it.each([
    ['CMYK', cmykArt()],
    ['RGB of its own', rgbArt(P3, codesOf(3))],
  ])('%s art that is only looked at has a proof and pictures too', async (_, bytes) => {
    const request = { blank: blankFromSize('20x20mm'), surface: 'second' } as const;
    const asked = { write: false, proof: { mark: true }, view: true } as const;
    const { report, proof, view } = await preflight({ path: 'bed', bytes }, request, asked);
    expect(report.plan.map(({ step }) => step)).toContain('convert');
    expect(proof).not.toBeNull();
    expect(view?.proof).not.toBeNull();
  });

  it('the record says by which intent it was converted, and whether with compensation', async () => {
    const { bytes, report } = await prepare(cmykArt(), RGB_PRINTER);
    expect(readPrintRecord(bytes)?.printerProfile).toMatchObject(WAY);
    expect(report.colours).toMatchObject(WAY);
    expect(report.outcomes.find(({ check }) => check === 'embedded-profile')).toMatchObject({
      findings: [{ facts: { convertedTo: readPrinterProfile(RGB_PRINTER, 'mine.icc').name } }],
    });
  });
});
