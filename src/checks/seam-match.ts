import { practiceLimit } from '../catalogue/practice.ts';
import { measureDeltaE2000 } from '../colour/delta-e-2000.ts';
import { formatLength } from '../geometry/length.ts';
import { LAB_PROFILE } from '../icc/lab-profile.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { makeTransform } from '../icc/transform.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { CELL_MM, makeCellReader, type StripCell } from './strip-cells.ts';
import { needsWholeWrap, type WrapInputs } from './wrap-inputs.ts';

const STEP = practiceLimit('seam-step');
const LENGTH = practiceLimit('seam-length');
const DARK = practiceLimit('seam-dark');

export default defineCheck<WrapInputs & { readonly source: IccProfile }>({
  id: 'seam-match',
  title: 'The two ends at the seam',
  reason:
    'On a full wrap the end of the art meets its beginning: what does not go on there is seen as a line down the body.',
  source: ['CIEDE2000 (Sharma, Wu and Dalal, 2005)', 'own choice: limits of the step and of its length'],
  codes: { 'ends-differ': ['warning'], 'dark-overlap': ['advice'] },
  needs: (subject) => {
    const needs = needsWholeWrap(subject);
    if ('skip' in needs) return needs;
    if (needs.inputs.picture.raster.model === 'cmyk')
      return { skip: 'the art is in the inks of a printer, whose colours are not compared here' };
    return {
      inputs: { ...needs.inputs, source: subject.artwork.ownColours?.profile ?? SRGB_PROFILE },
    };
  },
  run: ({ job, picture, wrap, source }) => {
    const round = wrap.development.onceRoundMm;
    const read = makeCellReader(job, picture);
    const labOf = makeTransform(source, LAB_PROFILE, { intent: 'relative', blackPointCompensation: false });
    const white = source.space === 'gray' ? [1] : [1, 1, 1];
    const toLab = (cell: StripCell | null) =>
      labOf.convert(cell?.colour ?? white) as [number, number, number];
    const steps: number[] = [];
    let darkMm = 0;
    for (let y = 0; y + CELL_MM <= job.blank.edge.box.height; y += CELL_MM) {
      const at = (x: number, width = CELL_MM) => read({ x, y, width, height: CELL_MM });
      const [start, end] = [at(0), at(round - CELL_MM)];
      if (!start?.visible && !end?.visible) continue;
      const [one, other] = [toLab(start), toLab(end)];
      steps.push(measureDeltaE2000(one[0], one[1], one[2], other[0], other[1], other[2]));
      const lapped = wrap.overlapMm > 0 ? at(round, wrap.overlapMm) : null;
      if (lapped?.visible && toLab(lapped)[0] < DARK.value) darkMm += CELL_MM;
    }
    const inkedMm = steps.length * CELL_MM;
    const differs = steps.filter((step) => step > STEP.value);
    const facts = {
      inkedMm,
      differsMm: differs.length * CELL_MM,
      meanDeltaE00: mean(steps),
      darkOverlapMm: darkMm,
    };
    const found: Finding[] = [];
    if (differs.length * 100 > LENGTH.value * steps.length)
      found.push({
        code: 'ends-differ',
        severity: 'warning',
        actual: { value: mean(differs), unit: 'dE00' },
        expected: { max: STEP.value, unit: 'dE00', from: STEP.from },
        facts,
      });
    if (darkMm * 100 > LENGTH.value * inkedMm)
      found.push({
        code: 'dark-overlap',
        severity: 'advice',
        actual: { value: (darkMm / inkedMm) * 100, unit: 'percent' },
        expected: { max: LENGTH.value, unit: 'percent', from: LENGTH.from },
        facts,
      });
    return { findings: found, facts };
  },
  phrases: {
    'ends-differ': ({ actual, facts }) =>
      `The end of the art does not go on where it begins: along ${formatLength(Number(facts.differsMm))} of ${formatLength(Number(facts.inkedMm))} of the seam the two differ by ${actual!.value.toFixed(1)} dE00. Take art whose left and right ends fit together, leave a plain strip at the seam, or turn the seam to where it is not looked at.`,
    'dark-overlap': ({ facts }) =>
      `Dark colour lies along ${formatLength(Number(facts.darkOverlapMm))} of the overlap, where paper on paper shows a line most. Put the seam at the back, or art that is light where it begins and ends.`,
  },
});

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
