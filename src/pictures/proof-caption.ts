import type { PrintingCondition } from '../conditions/printing-condition.ts';
import { formatSize } from '../geometry/length.ts';
import type { BlankInHand } from '../job/job.ts';

/** What the marks of a proof stand for. */
export interface MarkedShare {
  /** Of the visible art. */
  readonly sharePercent: number;
  /** dE00 above which a colour is marked. */
  readonly limitDeltaE: number;
}

/** The lines under a proof, the first of them its heading. */
export function writeProofCaption(
  { id, outline: { box }, baseColour }: Pick<BlankInHand, 'id' | 'outline' | 'baseColour'>,
  { name, attribution, reference }: PrintingCondition,
  marked: MarkedShare | null,
): readonly string[] {
  const { r, g, b } = baseColour;
  const isWhite = Math.min(r, g, b) === 255;
  const hex = [r, g, b].map((code) => code.toString(16).padStart(2, '0')).join('');
  return [
    'PROOF, not for printing',
    `${id}, ${formatSize(box.width, box.height)}, seen from the front${isWhite ? '' : `, on a base of #${hex}`}`,
    `Colours of: ${name}`,
    ...(attribution === null ? [] : [attribution]),
    ...(marked === null ? [] : [tellMarked(marked)]),
    `${reference ? 'This reference is not your printer' : 'A screen is not a print'}: a pressed swatch has the last word.`,
  ];
}

function tellMarked({ sharePercent, limitDeltaE }: MarkedShare): string {
  const off = `more than ${Number(limitDeltaE.toFixed(1))} dE00 off`;
  if (sharePercent === 0) return `Striped: nothing; no visible colour comes out ${off}`;
  const share =
    sharePercent < 0.1 ? 'under 0.1' : String(Number(sharePercent.toFixed(sharePercent < 10 ? 1 : 0)));
  return `Striped: ${share} % of the visible art, colours that come out ${off}`;
}
