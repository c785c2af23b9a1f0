import { applyMatrix, invertMatrix, type Matrix3 } from '../colour/matrix3.ts';
import type { TableIntent } from './profile.ts';

/** Above this part of the printed range a round trip counts as the middle, which is straight within 4 L*. */
const MIDDLE_FROM = 0.2;
const STRAIGHT_WITHIN = 4;

/** Part of the printed range, from black, through which the parabola is laid. */
const FIT_RANGE: Readonly<Record<TableIntent, readonly [number, number]>> = {
  relative: [0.1, 0.5],
  perceptual: [0.03, 0.25],
  saturation: [0.03, 0.25],
};

/**
 * L* at which the round trip of a neutral ramp bends into its floor: the root of a parabola laid through the shadows.
 * `straight` when a relative colorimetric trip needs no fit; null when nothing can be found.
 * `asked` rises evenly to 100; `printed` is what came back, and need not be monotone.
 * @see ISO 18619:2015 (estimation of the destination black point)
 */
export function findShadowCorner(
  asked: readonly number[],
  printed: readonly number[],
  intent: TableIntent,
): number | 'straight' | null {
  const rising = [...printed];
  for (let i = rising.length - 2; i > 0; i--) rising[i] = Math.min(rising[i]!, rising[i + 1]!);
  const lowest = rising[0]!;
  const span = rising.at(-1)! - lowest;
  if (!(span > 0)) return null;
  const isOff = (lightness: number, i: number) =>
    asked[i]! > lowest + MIDDLE_FROM * span && Math.abs(asked[i]! - lightness) >= STRAIGHT_WITHIN;
  if (intent === 'relative' && !rising.some(isOff)) return 'straight';

  const [from, to] = FIT_RANGE[intent];
  const shadows = rising.flatMap((lightness, i) => {
    const part = (lightness - lowest) / span;
    return part >= from && part < to ? [{ x: asked[i]!, y: part }] : [];
  });
  return shadows.length < 4 ? null : findParabolaRoot(shadows);
}

/** The upper root of the least-squares parabola, within 0…50; 0 where it has none. */
function findParabolaRoot(points: readonly { readonly x: number; readonly y: number }[]): number {
  const sum = (power: number, weight: (y: number) => number) =>
    points.reduce((total, { x, y }) => total + x ** power * weight(y), 0);
  const moments = [0, 1, 2, 3, 4].map((power) => sum(power, () => 1));
  const [s0 = 0, s1 = 0, s2 = 0, s3 = 0, s4 = 0] = moments;
  const normal: Matrix3 = [
    [s0, s1, s2],
    [s1, s2, s3],
    [s2, s3, s4],
  ];
  const inverse = invertMatrix(normal);
  if (!inverse) return 0;
  const [c, b, a] = applyMatrix(inverse, [sum(0, (y) => y), sum(1, (y) => y), sum(2, (y) => y)]);
  const root = Math.abs(a) < 1e-10 ? -c / b : (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
  return root > 0 ? Math.min(50, root) : 0;
}
