import { describe, expect, it } from 'vitest';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { cmykArt, codesOf, prepare, RGB_TABLE, rgbArt } from './jobs.ts';

describe('art in the colours of the very printer', () => {
  const samples = codesOf(3);
  it('goes through as it is, and the report says so', async () => {
    const { pixels, report } = await prepare(rgbArt(RGB_TABLE, samples), RGB_TABLE);
    expect(pixels.flat()).toEqual(samples);
    expect(report.colours).toMatchObject({ convertedBy: 'file', unchanged: true });
    expect(report.plan.some(({ step }) => step.startsWith('convert'))).toBe(false);
    const found = report.outcomes.find(({ check }) => check === 'embedded-profile');
    expect(found).toMatchObject({ findings: [{ code: 'printer-profile', facts: { samePrinter: true } }] });
  });

  it('is found where inks are mixed anew', async () => {
    const { report } = await prepare(cmykArt(COATED_REFERENCE), COATED_REFERENCE);
    const found = report.outcomes.find(({ check }) => check === 'embedded-profile');
    expect(found).toMatchObject({ findings: [{ code: 'device-cmyk', facts: { samePrinter: true } }] });
    expect(report.colours).not.toHaveProperty('unchanged');
  });
});
