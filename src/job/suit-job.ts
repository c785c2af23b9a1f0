import { MM_PER_INCH } from '../geometry/length.ts';
import { turnSize } from './art-frame.ts';
import type { Job } from './job.ts';
import { bleedBoxOf } from './lines.ts';
import { scaleToCover } from './place-art.ts';

export type SuitVerdict = 'good' | 'acceptable' | 'below';
/** The best first. */
const SUIT_VERDICTS: readonly SuitVerdict[] = ['good', 'acceptable', 'below'];

export interface SizeInMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** How an artwork suits one blank. Sizes are those of its visible part, and never more than the blank takes. */
export interface BlankSuit extends SizeInMm {
  readonly id: string;
  /** Match of the proportions of art and blank, 0 to 1: at 1 `cover` cuts nothing but the bleed. */
  readonly fit: number;
  /** At the size above, which is that of `inside`. */
  readonly effectivePpi: number;
  /** That ppi against the family's limits. */
  readonly verdict: SuitVerdict;
  /** The largest size at which the resolution is good, and at which it is acceptable. */
  readonly good: SizeInMm;
  readonly acceptable: SizeInMm;
  /** Under `cover`: the art reaches the bleed line all round, at an acceptable resolution. */
  readonly fullBleed: boolean;
}

/** What doubles lose must not decide a verdict. */
const ROUNDING = 1e-9;

/** `job` is that of `inside`. `coversEdge`: under `cover` the art reaches the bleed line all round; asked only where that matters. `isDrawing`: the art is drawn at the print's own resolution, whatever its size. */
export function suitJob(
  job: Job,
  { coversEdge, isDrawing }: { readonly coversEdge: () => boolean; readonly isDrawing: boolean },
): BlankSuit {
  const { blank, contentBoxPx, turn, placementMm } = job;
  const { good, acceptable } = blank.resolution;
  const turned = turnSize(contentBoxPx, turn);
  const bleedBox = bleedBoxOf(blank);
  const ppiAt = (mmPerPixel: number) => (isDrawing ? blank.ppi : MM_PER_INCH / mmPerPixel);
  const reaches = (ppi: number, limit: number) => isDrawing || ppi >= limit * (1 - ROUNDING);
  const size = { widthMm: placementMm.width, heightMm: placementMm.height };
  const effectivePpi = ppiAt(placementMm.width / turned.width);
  const sizeAt = (limitPpi: number) => {
    const share = isDrawing ? 1 : Math.min(1, effectivePpi / limitPpi);
    return { widthMm: size.widthMm * share, heightMm: size.heightMm * share };
  };
  const [artShape, blankShape] = [turned.width / turned.height, bleedBox.width / bleedBox.height];
  const coverPpi = ppiAt(scaleToCover(blank, turned).x);
  return {
    id: blank.id,
    fit: Math.min(artShape / blankShape, blankShape / artShape),
    ...size,
    effectivePpi,
    verdict: reaches(effectivePpi, good.value)
      ? 'good'
      : reaches(effectivePpi, acceptable.value)
        ? 'acceptable'
        : 'below',
    good: sizeAt(good.value),
    acceptable: sizeAt(acceptable.value),
    fullBleed: reaches(coverPpi, acceptable.value) && coversEdge(),
  };
}

/** The most fitting first: by verdict, then what can bleed, then by proportions, then the larger, then by id. */
export function compareSuits(one: BlankSuit, other: BlankSuit): number {
  const area = ({ widthMm, heightMm }: BlankSuit) => widthMm * heightMm;
  return (
    SUIT_VERDICTS.indexOf(one.verdict) - SUIT_VERDICTS.indexOf(other.verdict) ||
    Number(other.fullBleed) - Number(one.fullBleed) ||
    other.fit - one.fit ||
    area(other) - area(one) ||
    (one.id < other.id ? -1 : 1)
  );
}
