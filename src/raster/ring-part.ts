/** A ring sector on a picture, even to left and right. Pixels; middles at .5. */
export interface RingPart {
  /** Middle of its arcs. */
  readonly apexPx: { readonly x: number; readonly y: number };
  readonly outerRadiusPx: number;
  readonly innerRadiusPx: number;
  readonly angleRad: number;
  /** Where the middle of the arcs lies. */
  readonly opens: 'below' | 'above';
}

/** Whether the middle of a pixel lies within. */
export function isWithinRing(ring: RingPart): (x: number, y: number) => boolean {
  const { apexPx, outerRadiusPx, innerRadiusPx, angleRad, opens } = ring;
  const down = opens === 'below' ? -1 : 1;
  const cos = Math.cos(angleRad / 2);
  return (x, y) => {
    const across = x + 0.5 - apexPx.x;
    const along = (y + 0.5 - apexPx.y) * down;
    const radius = Math.sqrt(across * across + along * along);
    // An angle from the axis is at most half the sector's where its cosine is at least that.
    return radius <= outerRadiusPx && radius >= innerRadiusPx && along >= radius * cos;
  };
}
