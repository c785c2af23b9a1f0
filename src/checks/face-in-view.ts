import { practiceLimit } from '../catalogue/practice.ts';
import { formatLength } from '../geometry/length.ts';
import { defineCheck } from './define-check.ts';
import { CELL_MM, makeCellReader } from './strip-cells.ts';
import { needsWrap, type WrapInputs } from './wrap-inputs.ts';

const ANGLE = practiceLimit('view-angle');
const SHARE = practiceLimit('turned-detail');
/** Contrast within a cell of 1 mm that letters and features have, of full scale (own choice). */
const DETAIL = 0.25;

export default defineCheck<WrapInputs>({
  id: 'face-in-view',
  title: 'Detail on the face that is looked at',
  reason:
    'What lies far round a body is seen from the side: at 45 degrees from the middle of the view it is 0.71 as wide, at 60 half.',
  source: [
    'cosine of the angle from the view (derived)',
    'common practice, no source: names and faces within 45 degrees',
  ],
  codes: { 'turned-away': ['advice'] },
  needs: (subject) => {
    const needs = needsWrap(subject);
    if ('skip' in needs || needs.inputs.job.facesMm.length > 0) return needs;
    return { skip: 'the art goes round the body, which has no one face then' };
  },
  run: ({ job, picture, wrap }) => {
    const reachMm = (ANGLE.value / 360) * wrap.development.onceRoundMm;
    const read = makeCellReader({ ...job, copiesMm: [] }, picture);
    const { x, y, width, height } = job.placementMm;
    const [face = x + width / 2] = job.facesMm;
    let [detail, turned, farthest] = [0, 0, 0];
    for (let across = x; across < x + width; across += CELL_MM) {
      const off = Math.abs(across + CELL_MM / 2 - face);
      for (let down = y; down < y + height; down += CELL_MM) {
        const cell = read({ x: across, y: down, width: CELL_MM, height: CELL_MM });
        if (!cell || cell.spread < DETAIL) continue;
        detail += 1;
        if (off <= reachMm) continue;
        turned += 1;
        farthest = Math.max(farthest, off);
      }
    }
    const percent = (turned / Math.max(1, detail)) * 100;
    const facts = { turnedPercent: percent, reachMm, farthestMm: farthest };
    if (percent <= SHARE.value) return { findings: [], facts };
    return {
      findings: [
        {
          code: 'turned-away',
          severity: 'advice',
          actual: { value: percent, unit: 'percent' },
          expected: { max: SHARE.value, unit: 'percent', from: SHARE.from },
          facts,
        },
      ],
    };
  },
  phrases: {
    'turned-away': ({ actual, facts }) =>
      `${Math.round(actual!.value)} % of the detail lies more than ${ANGLE.value} degrees round from the middle of the face, up to ${formatLength(Number(facts.farthestMm))} from it: it is seen askew. Keep names and faces within ${formatLength(Number(facts.reachMm))} to either side, such as with --width ${formatLength(
        2 * Number(facts.reachMm),
      )
        .split(' (')[0]!
        .replace(' ', '')}.`,
  },
});
