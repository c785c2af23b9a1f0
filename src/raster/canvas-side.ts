import { channelsOf, fullScaleOf, type Raster } from './raster.ts';

export const CANVAS_SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type CanvasSide = (typeof CANVAS_SIDES)[number];

/** A side of the canvas, read from its end inwards: the same view of all four. */
export interface SideView {
  readonly side: CanvasSide;
  /** Pixels along it, from the left or the top. */
  readonly lengthPx: number;
  /** Pixels from it to the opposite side. */
  readonly depthPx: number;
  /** Alpha of 255, so many pixels along the side and inwards from it; 255 where the raster has no alpha. */
  alphaAt(along: number, inward: number): number;
}

/** Both indices of `alphaAt` must lie within the raster. */
export function viewSide(raster: Raster, side: CanvasSide): SideView {
  const { widthPx, heightPx, data, hasAlpha } = raster;
  const channels = channelsOf(raster);
  const scale = fullScaleOf(raster) / 255;
  const isLevel = side === 'top' || side === 'bottom';
  const alongStep = channels * (isLevel ? 1 : widthPx);
  const inwardStep = channels * (isLevel ? widthPx : 1) * (side === 'bottom' || side === 'right' ? -1 : 1);
  const first =
    channels -
    1 +
    channels * (side === 'bottom' ? (heightPx - 1) * widthPx : side === 'right' ? widthPx - 1 : 0);
  return {
    side,
    lengthPx: isLevel ? widthPx : heightPx,
    depthPx: isLevel ? heightPx : widthPx,
    alphaAt: (along, inward) =>
      hasAlpha ? data[first + along * alongStep + inward * inwardStep]! / scale : 255,
  };
}
