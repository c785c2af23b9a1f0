import { convertGrid3 } from './convert-grid3.ts';
import { makeFastGrid3 } from './convert-grid3-fast.ts';
import { convertGrid4 } from './convert-grid4.ts';
import { once } from './once.ts';
import { type GridPlan, makePixelGrid } from './pixel-grid.ts';
import type { PixelTransform } from './pixel-transform.ts';

/** Pixels of three or four channels through a grid with one to four outputs. */
export function compileGrid(plan: GridPlan): PixelTransform {
  const inputs = plan.sizes.length;
  const { outputs } = plan;
  const grid8 = once(() => makePixelGrid(plan, 255));
  const fast8 = once(() => makeFastGrid3(grid8()));
  const grid16 = once(() => makePixelGrid(plan, 65535));
  return {
    inputChannels: inputs,
    outputChannels: outputs,
    convert8: (source, target, pixels, sourceStride = inputs, targetStride = outputs) =>
      inputs === 3
        ? fast8()(source, target, pixels, sourceStride, targetStride)
        : convertGrid4(source, target, pixels, sourceStride, targetStride, grid8()),
    convert16: (source, target, pixels, sourceStride = inputs, targetStride = outputs) =>
      (inputs === 3 ? convertGrid3 : convertGrid4)(
        source,
        target,
        pixels,
        sourceStride,
        targetStride,
        grid16(),
      ),
  };
}
