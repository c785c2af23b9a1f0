import { createRaster } from '../../src/raster/raster.ts';
import type { FaultCase } from './fault-case.ts';

/** Below, at and above the limit. */
export const MARKED_PREVIEW_CASES: readonly FaultCase[] = [640, 998, 999, 1000, 1001, 1600].map((side) => ({
  name: `${side} px on the longer side`,
  code: 'preview-sized',
  fault: side < 1000,
  widthMm: 60,
  raster: () => {
    const raster = createRaster({ widthPx: 40, heightPx: side, model: 'rgb', hasAlpha: true, depth: 8 });
    raster.data.fill(120);
    return raster;
  },
}));
