/** Linear part of an affine map, x' = a x + c y, y' = b x + d y; where things lie is not asked here, only how large. */
export interface Linear {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

const IDENTITY: Linear = { a: 1, b: 0, c: 0, d: 1 };

export function scaling(x: number, y: number): Linear {
  return { a: x, b: 0, c: 0, d: y };
}

/** First `inner`, then `outer`. */
export function compose(outer: Linear, inner: Linear): Linear {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
  };
}

/** Lengths of what was one unit along x, and along y. */
export function stretchOf({ a, b, c, d }: Linear): { readonly x: number; readonly y: number } {
  return { x: Math.hypot(a, b), y: Math.hypot(c, d) };
}

const TRANSFORM = /\b(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)/gi;

/** A `transform` attribute's list; what cannot be read changes nothing. @see SVG 2, 8.5; CSS Transforms 1, 8 */
export function parseTransform(text: string | undefined): Linear {
  let result = IDENTITY;
  for (const [, name = '', list = ''] of (text ?? '').matchAll(TRANSFORM)) {
    const numbers = list
      .trim()
      .split(/[\s,]+/)
      .map(Number.parseFloat);
    if (numbers.every(Number.isFinite)) result = compose(result, linearOf(name.toLowerCase(), numbers));
  }
  return result;
}

function linearOf(name: string, [first = 0, second, third = 0, fourth = 0]: readonly number[]): Linear {
  const radians = (first * Math.PI) / 180;
  switch (name) {
    case 'matrix':
      return { a: first, b: second ?? 0, c: third, d: fourth };
    case 'scale':
      return scaling(first, second ?? first);
    case 'rotate':
      return { a: Math.cos(radians), b: Math.sin(radians), c: -Math.sin(radians), d: Math.cos(radians) };
    case 'skewx':
      return { a: 1, b: 0, c: Math.tan(radians), d: 1 };
    case 'skewy':
      return { a: 1, b: Math.tan(radians), c: 0, d: 1 };
    default:
      return IDENTITY;
  }
}

/** User units to the viewport's, by `preserveAspectRatio`: `none`, else the smaller scale, or the larger to slice. */
export function viewBoxScale(
  viewport: { readonly width: number; readonly height: number },
  viewBox: { readonly width: number; readonly height: number },
  preserveAspectRatio = '',
): { readonly x: number; readonly y: number } {
  const x = viewport.width / viewBox.width;
  const y = viewport.height / viewBox.height;
  if (/^\s*none\b/.test(preserveAspectRatio)) return { x, y };
  const one = /\bslice\b/.test(preserveAspectRatio) ? Math.max(x, y) : Math.min(x, y);
  return { x: one, y: one };
}
