import type { Steps } from '../steps.ts';
import { FreeRects, type Rect } from './free-rects.ts';
import type { KindsPage, PackedKind, Size } from './pack-item.ts';
import type { Stock } from './stock.ts';

/** How good a place is, smaller is better: compared by the first number, then by the second. */
export type Rule = (free: Rect, size: Size) => readonly [number, number];

/** The free rectangle whose tighter side is left the least, then the other. */
const byShortSide: Rule = (free, { width, height }) => {
  const across = free.width - width;
  const down = free.height - height;
  return across < down ? [across, down] : [down, across];
};

/** The same, but large pieces go first: small ones find room later. */
const byAreaThenShortSide: Rule = (free, size) => [
  -size.width * size.height,
  Math.min(free.width - size.width, free.height - size.height),
];

/** Long pieces first. */
const byLongestThenShortSide: Rule = (free, size) => [
  -Math.max(size.width, size.height),
  Math.min(free.width - size.width, free.height - size.height),
];

/** The smallest free rectangle that takes it, for its area. */
const byWaste: Rule = (free, { width, height }) => [
  (free.width * free.height) / (width * height),
  Math.min(free.width - width, free.height - height),
];

/** Every rule, the one that most often wins first. */
export const RULES: readonly Rule[] = [byShortSide, byAreaThenShortSide, byLongestThenShortSide, byWaste];

/**
 * Fills one page from a stock: again and again the pair of kind and place that the rule finds best, until nothing fits;
 * of equals the first kind, the first of its shapes, the oldest place. Where only a page of all of them is of use (`allOrNone`), it ends once one of them fits nowhere.
 */
export function* fillPage(stock: Stock, room: Size, rule: Rule, allOrNone = false): Steps<KindsPage> {
  const free = new FreeRects(room.width, room.height);
  const packed: PackedKind[] = [];
  let candidates = listCandidates(stock);
  let [fresh, gone]: readonly [readonly Rect[], ReadonlySet<Rect>] = [free.all, new Set()];
  for (;;) {
    const open: Candidate[] = [];
    let best: Candidate | null = null;
    for (const candidate of candidates) {
      const { kind } = candidate;
      if (kind.waiting === 0) continue;
      if (candidate.at && gone.has(candidate.at)) lookAgain(candidate, free.all, rule);
      else lookAt(candidate, fresh, rule);
      // What fits nowhere never will: free places only shrink.
      if (candidate.at === null) kind.waysLeft -= 1;
      else open.push(candidate);
      if (allOrNone && kind.waysLeft === 0) return packed;
      if (isBetter(candidate.score, best?.score ?? NOWHERE)) best = candidate;
    }
    if (!best?.at) return packed;
    const { kind, shape, size, at } = best;
    packed.push({ kind: kind.at, shape, x: at.x, y: at.y });
    kind.waiting -= 1;
    ({ fresh, gone } = free.take({ x: at.x, y: at.y, ...size }));
    candidates = open;
    yield;
  }
}

/** What is waiting of a kind, which has its place in the stock. */
interface Waiting {
  readonly at: number;
  waiting: number;
  /** In how many of their shapes the next of them may still fit. */
  waysLeft: number;
}

/** Items of a kind, lying in one of their shapes, and the best place for the next. */
interface Candidate {
  readonly kind: Waiting;
  readonly shape: number;
  readonly size: Size;
  /** null where it fits nowhere. */
  at: Rect | null;
  score: readonly [number, number];
}

const NOWHERE = [Infinity, Infinity] as const;

function listCandidates(stock: Stock): readonly Candidate[] {
  return stock.flatMap(({ shapes, items }, at) => {
    const kind = { at, waiting: items.length, waysLeft: shapes.length };
    return shapes.map((size, shape) => ({ kind, shape, size, at: null, score: NOWHERE }));
  });
}

/** Its place among all that are free, since the one that it had is no more. */
function lookAgain(candidate: Candidate, free: readonly Rect[], rule: Rule): void {
  candidate.at = null;
  candidate.score = NOWHERE;
  lookAt(candidate, free, rule);
}

/** Whether one of these places, younger than its own, is better. */
function lookAt(candidate: Candidate, places: readonly Rect[], rule: Rule): void {
  const { size } = candidate;
  for (const place of places) {
    if (size.width > place.width || size.height > place.height) continue;
    const score = rule(place, size);
    if (!isBetter(score, candidate.score)) continue;
    candidate.score = score;
    candidate.at = place;
  }
}

function isBetter(one: readonly [number, number], other: readonly [number, number]): boolean {
  return one[0] < other[0] || (one[0] === other[0] && one[1] < other[1]);
}
