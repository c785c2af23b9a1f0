import { developBand, RECTANGLE_DIFFERENCE_MM, RECTANGLE_SAGITTA_MM } from '../geometry/development.ts';
import { formatLength } from '../geometry/length.ts';
import type { WrapInHand } from '../job/wrap-in-hand.ts';
import { defineCheck } from './define-check.ts';
import { needsWrap } from './wrap-inputs.ts';

export default defineCheck<{ readonly wrap: WrapInHand }>({
  id: 'taper',
  title: 'Straight paper on a tapered body',
  reason:
    'A rectangle does not lie on a cone: it is too short at the wide end, creases at the narrow one, and prints askew.',
  source: [
    'development of a right circular cone (any handbook of geometry)',
    `limits of ${RECTANGLE_SAGITTA_MM} mm of sagitta and ${RECTANGLE_DIFFERENCE_MM} mm of difference in circumference: common practice, no source`,
  ],
  codes: { 'will-not-fit': ['warning'] },
  needs: needsWrap,
  run: ({ wrap }) => {
    const { band, development, asked } = wrap;
    const { rim, foot } = development.rectangleErrorMm;
    const facts = { rimErrorMm: rim, footErrorMm: foot, asked };
    if (asked === 'auto') return { findings: [], facts };
    const needed = developBand(band, { lengthMm: development.strip.widthMm });
    if (needed.kind === 'rectangle') return { findings: [], facts };
    return {
      findings: [
        {
          code: 'will-not-fit',
          severity: 'warning',
          actual: { value: Math.max(Math.abs(rim), Math.abs(foot)), unit: 'mm' },
          // Half the difference is too long at one end, half too short at the other.
          expected: { max: RECTANGLE_DIFFERENCE_MM / 2, unit: 'mm', from: 'geometry:rectangle' },
          facts,
        },
      ],
    };
  },
  phrases: {
    'will-not-fit': ({ facts }) =>
      `A rectangle was asked for, but this body is tapered: the paper would be ${error(facts.rimErrorMm)} at the rim and ${error(facts.footErrorMm)} at the foot. Leave --development out: the print-ready file is then the arc of paper that the body needs.`,
  },
});

function error(value: unknown): string {
  const mm = Number(value);
  return `${formatLength(Math.abs(mm))} too ${mm < 0 ? 'short' : 'long'}`;
}
