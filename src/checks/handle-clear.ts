import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import { defineCheck } from './define-check.ts';
import { endsOf, needsWrap, type WrapInputs } from './wrap-inputs.ts';

const HANDLE = practiceLimit('handle-room');

export default defineCheck<WrapInputs>({
  id: 'handle-clear',
  title: 'Clear of the handle',
  reason:
    'Beside the handle the press does not reach: paper there lifts, and what it carries prints pale or not at all.',
  source: [
    'gap at the handle of the blank (common practice, no source)',
    `${HANDLE.value} mm for the handle and its room (own choice)`,
  ],
  codes: { 'into-gap': ['warning'] },
  needs: (subject) => {
    const needs = needsWrap(subject);
    if ('skip' in needs || needs.inputs.wrap.wayRound === 'part') return needs;
    return { skip: 'the paper goes the whole way round: there is no handle in its way' };
  },
  run: ({ job, wrap }) => {
    const { strip, onceRoundMm } = wrap.development;
    const { left, right } = endsOf(job);
    const bleed = job.blank.bleed.value;
    const beyond = Math.max(-left, right - strip.widthMm);
    const facts = { gapMm: onceRoundMm - strip.widthMm, beyondMm: Math.max(0, beyond) };
    // Art that bleeds off the paper's end is cut at the bleed line; art cannot be both there and under the handle.
    const printed = Math.min(beyond, bleed);
    const most = Math.max(0, (onceRoundMm - strip.widthMm) / 2 - HANDLE.value / 2);
    if (printed <= most + 1e-6) return { findings: [], facts };
    return {
      findings: [
        {
          code: 'into-gap',
          severity: 'warning',
          actual: { value: printed, unit: 'mm' },
          expected: { max: most, unit: 'mm', from: HANDLE.from },
          facts,
        },
      ],
    };
  },
  phrases: {
    'into-gap': ({ actual, expected, facts }) =>
      `The print goes ${formatLength(actual!.value)} beyond the end of the paper into the gap of ${formatLength(Number(facts.gapMm))} at the handle, where at most ${formatLength(expected!.max!)} stay clear of it. Make it smaller with --width, or give a smaller --bleed.`,
  },
});
