import type { LightnessCells } from '../raster/lightness-cells.ts';

/** Cells around one, each way, whose mean is what it stands out from (own choice: strokes of lettering are narrower). */
const AROUND = 6;
/** An edge of the art says no more than a faint mark does: contrast ends here, L* (own choice). */
const MOST = 6;

/** How far each cell stands out from the mean of its neighbourhood, L*, at most `MOST` up and down. */
export function measureLocalContrast({ width, height, values }: LightnessCells): Float64Array {
  const sums = sumUp(width, height, values);
  const contrast = new Float64Array(values.length);
  for (let y = 0, cell = 0; y < height; y += 1) {
    const [top, bottom] = [Math.max(0, y - AROUND), Math.min(height, y + AROUND + 1)];
    const [above, below] = [top * (width + 1), bottom * (width + 1)];
    for (let x = 0; x < width; x += 1, cell += 1) {
      const left = Math.max(0, x - AROUND);
      const right = Math.min(width, x + AROUND + 1);
      const sum = sums[below + right]! - sums[below + left]! - sums[above + right]! + sums[above + left]!;
      const mean = sum / ((right - left) * (bottom - top));
      contrast[cell] = Math.max(-MOST, Math.min(MOST, values[cell]! - mean));
    }
  }
  return contrast;
}

/**
 * Sums of all that lies left of and above each corner, one row and column more than the picture.
 * @see F. C. Crow, "Summed-area tables for texture mapping", SIGGRAPH 1984.
 */
function sumUp(width: number, height: number, values: Float64Array): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y += 1) {
    let row = 0;
    for (let x = 0; x < width; x += 1) {
      row += values[y * width + x]!;
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
    }
  }
  return sums;
}
