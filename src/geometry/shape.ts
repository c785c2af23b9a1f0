import type { RectMm } from './rectangle.ts';

/**
 * An outline in millimetres, within its box. Origin of the polygon's points is the top left of the box;
 * `box` places the shape in the frame of the blank (origin: top left of the blank's outline box).
 */
export type Shape =
  | { readonly kind: 'rect'; readonly box: RectMm }
  | { readonly kind: 'rounded-rect'; readonly box: RectMm; readonly cornerRadiusMm: number }
  | { readonly kind: 'circle'; readonly box: RectMm }
  | { readonly kind: 'ellipse'; readonly box: RectMm }
  | { readonly kind: 'stadium'; readonly box: RectMm }
  | {
      readonly kind: 'polygon';
      readonly box: RectMm;
      readonly pointsMm: readonly (readonly [number, number])[];
    };
