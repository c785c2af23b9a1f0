/** A rectangle in whole units. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The free part of a page as all its largest free rectangles, which overlap: whatever fits the page fits one of them.
 */
export class FreeRects {
  #free: readonly Rect[];

  constructor(width: number, height: number) {
    this.#free = [{ x: 0, y: 0, width, height }];
  }

  get all(): readonly Rect[] {
    return this.#free;
  }

  /**
   * Takes a rectangle out: each free one that it meets leaves up to four, of which those within others go. Comes back with
   * those that are new and those that are gone; the others stay in their order before the new ones, the very objects.
   */
  take(taken: Rect): { readonly fresh: readonly Rect[]; readonly gone: ReadonlySet<Rect> } {
    const kept: Rect[] = [];
    const cut: Rect[] = [];
    const gone = new Set<Rect>();
    for (const free of this.#free) {
      if (!meets(free, taken)) {
        kept.push(free);
        continue;
      }
      gone.add(free);
      cut.push(...partsBeside(free, taken));
    }
    const fresh = cut.filter(
      (part, index) =>
        !kept.some((other) => holds(other, part)) &&
        !cut.some((other, at) => at !== index && holds(other, part) && (at < index || !holds(part, other))),
    );
    this.#free = [...kept, ...fresh];
    return { fresh, gone };
  }
}

function partsBeside(free: Rect, taken: Rect): Rect[] {
  const right = free.x + free.width;
  const bottom = free.y + free.height;
  const parts = [
    { ...free, width: taken.x - free.x },
    { ...free, x: taken.x + taken.width, width: right - taken.x - taken.width },
    { ...free, height: taken.y - free.y },
    { ...free, y: taken.y + taken.height, height: bottom - taken.y - taken.height },
  ];
  return parts.filter(({ width, height }) => width > 0 && height > 0);
}

function meets(one: Rect, other: Rect): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

function holds(outer: Rect, inner: Rect): boolean {
  return (
    outer.x <= inner.x &&
    outer.y <= inner.y &&
    outer.x + outer.width >= inner.x + inner.width &&
    outer.y + outer.height >= inner.y + inner.height
  );
}
