import type { Job } from '../job/job.ts';
import type { WrapInHand } from '../job/wrap-in-hand.ts';
import type { Needs, PrintPicture, Subject } from './define-check.ts';

/** What the checks of round bodies look at. */
export interface WrapInputs {
  readonly wrap: WrapInHand;
  readonly job: Job;
  readonly picture: PrintPicture;
}

const FLAT = 'the blank is flat, and nothing goes round it';

export function needsWrap({ job, picture }: Subject): Needs<WrapInputs> {
  if (job === null || picture === null) return { skip: 'nothing is visible, so nothing goes round the body' };
  const { wrap } = job.blank;
  return wrap ? { inputs: { wrap, job, picture } } : { skip: FLAT };
}

/** The same of a body that the paper goes round wholly. */
export function needsWholeWrap(subject: Subject): Needs<WrapInputs> {
  const needs = needsWrap(subject);
  if ('skip' in needs || needs.inputs.wrap.wayRound === 'whole') return needs;
  return { skip: 'the paper ends before the handle: its ends do not meet' };
}

/** Left and right end of the art and its repeats, mm along the strip. */
export function endsOf({ placementMm, copiesMm }: Job): { readonly left: number; readonly right: number } {
  const { x, width } = placementMm;
  return { left: x + Math.min(0, ...copiesMm), right: x + width + Math.max(0, ...copiesMm) };
}
