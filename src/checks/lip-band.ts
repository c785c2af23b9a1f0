import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import { findPrintedPart } from '../job/find-inked-part.ts';
import type { Subject } from './define-check.ts';
import { defineCheck } from './define-check.ts';
import { needsWrap, type WrapInputs } from './wrap-inputs.ts';

const BAND = practiceLimit('lip-band');

export default defineCheck<WrapInputs & { readonly topMm: number | null }>({
  id: 'lip-band',
  title: 'Print near the rim',
  reason:
    'Lips touch the outside of a cup below its rim; whether a coating and its print may be touched there is for the maker of the blank to say.',
  source: ["common practice, no source: 20 mm below the rim; the sheet of the blank's maker decides"],
  codes: { 'near-rim': ['advice'] },
  needs: (subject) => {
    const needs = needsWrap(subject);
    return 'skip' in needs ? needs : { inputs: { ...needs.inputs, topMm: findTop(subject) } };
  },
  run: ({ wrap, topMm }) => {
    if (topMm === null) return { findings: [] };
    const fromRimMm = wrap.clearTopMm + topMm;
    if (fromRimMm >= BAND.value) return { findings: [], facts: { fromRimMm } };
    return {
      findings: [
        {
          code: 'near-rim',
          severity: 'advice',
          actual: { value: fromRimMm, unit: 'mm' },
          expected: { min: BAND.value, unit: 'mm', from: BAND.from },
          facts: { fromRimMm },
        },
      ],
    };
  },
  phrases: {
    'near-rim': ({ actual, expected }) =>
      `The print begins ${formatLength(Math.max(0, actual!.value))} below the rim, within the ${formatLength(expected!.min!)} that lips touch. Nothing is claimed here about what may touch a mouth: see the sheet of the blank's maker, or keep the band clear with --height or --offset 0mm,…`,
  },
});

/** Upper end of what is inked, mm along the slant from the upper end of the band. */
function findTop({ job, extents }: Subject): number | null {
  const flat = job && { ...job, blank: { ...job.blank, wrap: null } };
  return (flat && findPrintedPart(flat, extents)?.y) ?? null;
}
