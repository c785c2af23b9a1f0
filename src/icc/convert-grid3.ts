import { clip, type PixelGrid, WEIGHT_BITS } from './pixel-grid.ts';

/**
 * Pixels of three channels through a grid by tetrahedral interpolation, in whole numbers: the six ways to order the
 * three fractions are the six tetrahedra of a cell. Written flat, because this loop decides how long a picture takes.
 * A run of one colour, as margins are, is looked up once.
 */
export function convertGrid3(
  source: Uint8Array | Uint16Array,
  target: Uint8Array | Uint16Array,
  pixels: number,
  sourceStride: number,
  targetStride: number,
  { axes, nodes, outputs, fullScale, shift }: PixelGrid,
): void {
  const [x, y, z] = [axes[0]!, axes[1]!, axes[2]!];
  const [xStride, yStride, zStride] = [x.stride, y.stride, z.stride];
  const [xOffsets, yOffsets, zOffsets] = [x.offsets, y.offsets, z.offsets];
  const [xWeights, yWeights, zWeights] = [x.weights, y.weights, z.weights];
  const whole = xStride + yStride + zStride;
  const one = 1 << WEIGHT_BITS;
  const half = 1 << (shift - 1);
  const outside = ~fullScale;
  let xLast = -1;
  let yLast = -1;
  let zLast = -1;
  for (let i = 0, s = 0, t = 0; i < pixels; i++, s += sourceStride, t += targetStride) {
    const xCode = source[s]!;
    const yCode = source[s + 1]!;
    const zCode = source[s + 2]!;
    if (xCode === xLast && yCode === yLast && zCode === zLast) {
      for (let k = 0; k < outputs; k++) target[t + k] = target[t - targetStride + k]!;
      continue;
    }
    xLast = xCode;
    yLast = yCode;
    zLast = zCode;
    const fx = xWeights[xCode]!;
    const fy = yWeights[yCode]!;
    const fz = zWeights[zCode]!;
    let first: number;
    let second: number;
    let high: number;
    let middle: number;
    let low: number;
    if (fx >= fy) {
      if (fy >= fz) {
        [first, second, high, middle, low] = [xStride, xStride + yStride, fx, fy, fz];
      } else if (fx >= fz) {
        [first, second, high, middle, low] = [xStride, xStride + zStride, fx, fz, fy];
      } else {
        [first, second, high, middle, low] = [zStride, xStride + zStride, fz, fx, fy];
      }
    } else if (fx >= fz) {
      [first, second, high, middle, low] = [yStride, xStride + yStride, fy, fx, fz];
    } else if (fy >= fz) {
      [first, second, high, middle, low] = [yStride, yStride + zStride, fy, fz, fx];
    } else {
      [first, second, high, middle, low] = [zStride, yStride + zStride, fz, fy, fx];
    }
    const a = xOffsets[xCode]! + yOffsets[yCode]! + zOffsets[zCode]!;
    const b = a + first;
    const c = a + second;
    const d = a + whole;
    const wa = one - high;
    const wb = high - middle;
    const wc = middle - low;
    const sum0 =
      Math.imul(nodes[a]!, wa) +
      Math.imul(nodes[b]!, wb) +
      Math.imul(nodes[c]!, wc) +
      Math.imul(nodes[d]!, low);
    const code0 = (sum0 + half) >> shift;
    target[t] = (code0 & outside) === 0 ? code0 : clip(code0, fullScale);
    if (outputs > 1) {
      const sum1 =
        Math.imul(nodes[a + 1]!, wa) +
        Math.imul(nodes[b + 1]!, wb) +
        Math.imul(nodes[c + 1]!, wc) +
        Math.imul(nodes[d + 1]!, low);
      const code1 = (sum1 + half) >> shift;
      target[t + 1] = (code1 & outside) === 0 ? code1 : clip(code1, fullScale);
    }
    if (outputs > 2) {
      const sum2 =
        Math.imul(nodes[a + 2]!, wa) +
        Math.imul(nodes[b + 2]!, wb) +
        Math.imul(nodes[c + 2]!, wc) +
        Math.imul(nodes[d + 2]!, low);
      const code2 = (sum2 + half) >> shift;
      target[t + 2] = (code2 & outside) === 0 ? code2 : clip(code2, fullScale);
    }
    if (outputs > 3) {
      const sum3 =
        Math.imul(nodes[a + 3]!, wa) +
        Math.imul(nodes[b + 3]!, wb) +
        Math.imul(nodes[c + 3]!, wc) +
        Math.imul(nodes[d + 3]!, low);
      const code3 = (sum3 + half) >> shift;
      target[t + 3] = (code3 & outside) === 0 ? code3 : clip(code3, fullScale);
    }
  }
}
