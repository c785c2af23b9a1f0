import { practiceLimit } from '../catalogue/practice.ts';
import { formatSize } from '../geometry/length.ts';
import type { BlankInHand } from '../job/job.ts';
import { defineCheck } from './define-check.ts';

const LIMIT = practiceLimit('measured-size');

export default defineCheck<BlankInHand | null>({
  id: 'measured-size',
  title: 'Measured size against the record',
  reason: 'A point or a unit slips easily: art for 19.7 mm or 20 in on a tile of 200 mm costs the tile.',
  source: ['nominal size of the blank (seeds/blanks.json)', 'common practice, no source'],
  codes: { 'far-from-nominal': ['warning'] },
  needs: ({ job }) => ({ inputs: job?.blank ?? null }),
  run: (blank) => {
    const nominal = blank?.nominalMm;
    if (!blank || !nominal) return { findings: [], facts: { measured: false } };
    const { width, height } = blank.outline.box;
    const percent =
      100 * Math.max(Math.abs(width / nominal.width - 1), Math.abs(height / nominal.height - 1));
    const facts = {
      measuredWidthMm: width,
      measuredHeightMm: height,
      nominalWidthMm: nominal.width,
      nominalHeightMm: nominal.height,
    };
    // Doubles may miss the limit by their last digits; a side exactly on it passes.
    if (percent <= LIMIT.value + 1e-9) return { findings: [], facts: { measured: true } };
    return {
      findings: [
        {
          code: 'far-from-nominal',
          severity: 'warning',
          actual: { value: percent, unit: 'percent' },
          expected: { max: LIMIT.value, unit: 'percent', from: LIMIT.from },
          facts,
        },
      ],
    };
  },
  phrases: {
    'far-from-nominal': ({ facts }) =>
      `The measured size, ${formatSize(Number(facts.measuredWidthMm), Number(facts.measuredHeightMm))}, is far from what this blank usually has, ${formatSize(Number(facts.nominalWidthMm), Number(facts.nominalHeightMm))}. Look at the unit and the decimal point of --measured, or whether this is another blank.`,
  },
});
