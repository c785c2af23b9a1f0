import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import { MEANT_TO_GO_ROUND } from '../job/wrap-places.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { endsOf, needsWholeWrap, type WrapInputs } from './wrap-inputs.ts';

const GAP = practiceLimit('wrap-gap');

export default defineCheck<WrapInputs>({
  id: 'wrap-length',
  title: 'Length against the way round',
  reason:
    'Art that is a little too short leaves a bare stripe at the seam; too long, its end prints on paper, or over its own beginning.',
  source: ['circumference = pi x diameter at mid height', 'common practice, no source'],
  codes: { 'bare-strip': ['warning', 'advice'], 'laps-over': ['advice'] },
  needs: needsWholeWrap,
  run: ({ job, wrap }) => {
    const round = wrap.development.onceRoundMm;
    const { left, right } = endsOf(job);
    const spanMm = right - left;
    const facts = { onceRoundMm: round, spanMm, overlapMm: wrap.overlapMm };
    // Repeats are spaced on purpose; those of art that goes round once follow on each other.
    const pitch = Math.min(Infinity, ...job.copiesMm.filter((mm) => mm > 0));
    const touching = Math.abs(pitch - round) < 1e-6;
    if (pitch < Infinity && !touching) return { findings: [], facts };
    const width = job.placementMm.width;
    const found: Finding[] = [];
    const bare = round - width;
    if (bare > GAP.value && width >= MEANT_TO_GO_ROUND * round)
      found.push({
        code: 'bare-strip',
        severity: touching ? 'warning' : 'advice',
        actual: { value: bare, unit: 'mm' },
        expected: { max: GAP.value, unit: 'mm', from: GAP.from },
        facts,
      });
    if (-bare > wrap.overlapMm + GAP.value)
      found.push({
        code: 'laps-over',
        severity: 'advice',
        actual: { value: -bare, unit: 'mm' },
        expected: { max: wrap.overlapMm + GAP.value, unit: 'mm', from: GAP.from },
        facts,
      });
    return { findings: found, facts };
  },
  phrases: {
    'bare-strip': ({ actual, facts }) =>
      `The art is ${formatLength(actual!.value)} shorter than the way round, ${formatLength(Number(facts.onceRoundMm))} at mid height: a bare strip that wide stays at the seam. Use --wrap around without --width, or put the strip on purpose where the seam is.`,
    'laps-over': ({ actual, facts }) =>
      `The art is ${formatLength(actual!.value)} longer than the way round, ${formatLength(Number(facts.onceRoundMm))} at mid height: that much of it lies over its own beginning and is not seen. Use --wrap around without --width.`,
  },
});
