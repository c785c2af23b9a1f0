import { BlankcheckError } from '../blankcheck-error.ts';
import { formatLength } from '../geometry/length.ts';
import type { BlankInHand } from './job.ts';
import type { WrapInHand } from './wrap-in-hand.ts';

/** Where on a round body the art goes: one face, both faces beside the handle, once round, or so many times round. */
export type WrapPlacing =
  | { readonly kind: 'one-face' }
  | { readonly kind: 'two-faces' }
  | { readonly kind: 'around' }
  | { readonly kind: 'repeat'; readonly times: number };

export type Hand = 'left' | 'right';

/** Where the art and its repeats have their middles along the strip. mm from its left end. */
export interface WrapPlaces {
  /** Of the art that is told of; the others are repeats of it. */
  readonly middleMm: number;
  readonly copiesMm: readonly number[];
  /** Of the faces that are looked at; empty for art that goes round. */
  readonly facesMm: readonly number[];
  /** Room for each, in which `inside` fits the art. */
  readonly roomMm: number;
  /** The width that is asked for, whatever the room; null where the art is fitted. */
  readonly widthMm: number | null;
}

/** More would be a pattern of dots (own choice). */
const MOST_REPEATS = 100;

/** Reads `one-face`, `two-faces`, `around` or `repeat:4`. @throws BlankcheckError `bad-option` */
export function parseWrapPlacing(text: string): WrapPlacing {
  const repeat = /^repeat:(\d+)$/.exec(text);
  const times = Number(repeat?.[1]);
  if (repeat && times >= 1 && times <= MOST_REPEATS) return { kind: 'repeat', times };
  if (text === 'one-face' || text === 'two-faces' || text === 'around') return { kind: text };
  throw new BlankcheckError(
    'bad-option',
    `Expected one-face, two-faces, around or repeat:n (n from 1 to ${MOST_REPEATS}) for --wrap, received "${text}".`,
  );
}

/** A viewer sees about a third of the way round well (common practice, no source). */
export const SEEN_SHARE = 1 / 3;

/**
 * Art at least so wide against the way round, or against paper that ends before it, is meant to go round, and has no one
 * face. Between two thirds, which leave bare as much as is seen at once, and what art that fills the paper from safe line
 * to safe line has on every round body of the catalogue (0.93 and more); where between is our own choice.
 */
export const MEANT_TO_GO_ROUND = 0.85;

/** How wide art is that goes once round: a whole wrap's way round, else the paper with its bleed. */
export function widthOnceRound({
  wrap,
  bleed,
}: { readonly wrap: WrapInHand } & Pick<BlankInHand, 'bleed'>): number {
  const { strip, onceRoundMm } = wrap.development;
  return wrap.wayRound === 'whole' ? onceRoundMm : strip.widthMm + 2 * bleed.value;
}

/**
 * The places on the paper of this body. Handle or seam is at its ends; a face is a quarter of the way round from it, and
 * somebody who drinks with the right hand sees the face at the right end of the paper.
 * @throws BlankcheckError `bad-option` for a flat blank, or a hand where no handle is.
 */
export function findWrapPlaces(
  blank: Pick<BlankInHand, 'id' | 'wrap' | 'bleed' | 'safe'>,
  placing: WrapPlacing,
  hand?: Hand,
): WrapPlaces {
  const { wrap } = blank;
  if (!wrap) throw new BlankcheckError('bad-option', `--wrap is for round bodies, and ${blank.id} is flat.`);
  checkHand(wrap, placing, hand);
  const { strip, onceRoundMm } = wrap.development;
  const whole = wrap.wayRound === 'whole';
  // Half the gap at the handle lies before the left end of the paper; on a whole wrap the seam is that end.
  const startMm = whole ? 0 : (onceRoundMm - strip.widthMm) / 2;
  const at = (turns: number) => turns * onceRoundMm - startMm;
  const seenMm = onceRoundMm * SEEN_SHARE;
  const span = whole ? onceRoundMm : strip.widthMm;
  switch (placing.kind) {
    case 'one-face':
      return faces([at(faceOf(wrap, hand))], seenMm);
    case 'two-faces':
      return faces([at(1 / 4), at(3 / 4)], seenMm);
    case 'around':
      return whole
        ? { middleMm: span / 2, copiesMm: [-span, span], facesMm: [], roomMm: span, widthMm: span }
        : {
            middleMm: span / 2,
            copiesMm: [],
            facesMm: [],
            roomMm: span,
            widthMm: widthOnceRound({ ...blank, wrap }),
          };
    case 'repeat': {
      const pitch = span / placing.times;
      const roomMm = pitch - blank.safe.value;
      if (roomMm <= 0)
        throw new BlankcheckError(
          'bad-option',
          `${placing.times} times round ${blank.id} leaves ${formatLength(pitch)} for each, less than the ${formatLength(blank.safe.value)} between them (--safe): ask for fewer.`,
        );
      const steps = Array.from({ length: placing.times - 1 }, (_, k) => (k + 1) * pitch);
      return {
        middleMm: pitch / 2,
        // The overlap repeats what lies under it, and so does the bleed at either end.
        copiesMm: whole ? [-pitch, ...steps, placing.times * pitch] : steps,
        facesMm: [],
        roomMm,
        widthMm: null,
      };
    }
  }
}

/** The art on the first of them, repeated on the others. */
function faces(facesMm: readonly [number, ...number[]], roomMm: number): WrapPlaces {
  const [middleMm, ...others] = facesMm;
  return { middleMm, copiesMm: others.map((mm) => mm - middleMm), facesMm, roomMm, widthMm: null };
}

/** Share of a turn from the handle, or from the seam. */
function faceOf({ wayRound }: WrapInHand, hand: Hand = 'right'): number {
  if (wayRound === 'whole') return 1 / 2;
  return hand === 'right' ? 3 / 4 : 1 / 4;
}

function checkHand({ wayRound }: WrapInHand, { kind }: WrapPlacing, hand?: Hand): void {
  if (hand === undefined || (kind === 'one-face' && wayRound === 'part')) return;
  throw new BlankcheckError(
    'bad-option',
    '--hand says which face is seen by who drinks with that hand: it goes with --wrap one-face on a body with a handle.',
  );
}
