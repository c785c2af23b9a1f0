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
  #free: Rect[];

  constructor(width: number, height: number) {
    this.#free = [{ x: 0, y: 0, width, height }];
  }

  get all(): readonly Rect[] {
    return this.#free;
  }

  /** Takes a rectangle out: each free one that it meets leaves up to four, of which those within others go. */
  take(taken: Rect): void {
    const kept: Rect[] = [];
    const cut: Rect[] = [];
    for (const free of this.#free) {
      if (meets(free, taken)) cut.push(...partsBeside(free, taken));
      else kept.push(free);
    }
    const fresh = cut.filter(
      (part, index) =>
        !kept.some((other) => holds(other, part)) &&
        !cut.some((other, at) => at !== index && holds(other, part) && (at < index || !holds(part, other))),
    );
    this.#free = [...kept, ...fresh];
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
