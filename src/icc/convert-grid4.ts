import { clip, type PixelGrid, WEIGHT_BITS } from './pixel-grid.ts';

/**
 * Pixels of four channels through a grid by simplex interpolation, in whole numbers: the four fractions are sorted
 * together with the strides of their axes, and the way from corner to corner follows that order. Written flat, and a run
 * of one colour looked up once, as in the loop for three channels.
 */
export function convertGrid4(
  source: Uint8Array | Uint16Array,
  target: Uint8Array | Uint16Array,
  pixels: number,
  sourceStride: number,
  targetStride: number,
  { axes, nodes, outputs, fullScale, shift }: PixelGrid,
): void {
  const [w, x, y, z] = [axes[0]!, axes[1]!, axes[2]!, axes[3]!];
  const [wOffsets, xOffsets, yOffsets, zOffsets] = [w.offsets, x.offsets, y.offsets, z.offsets];
  const [wWeights, xWeights, yWeights, zWeights] = [w.weights, x.weights, y.weights, z.weights];
  const one = 1 << WEIGHT_BITS;
  const half = 1 << (shift - 1);
  const outside = ~fullScale;
  let wLast = -1;
  let xLast = -1;
  let yLast = -1;
  let zLast = -1;
  for (let i = 0, s = 0, t = 0; i < pixels; i++, s += sourceStride, t += targetStride) {
    const wCode = source[s]!;
    const xCode = source[s + 1]!;
    const yCode = source[s + 2]!;
    const zCode = source[s + 3]!;
    if (wCode === wLast && xCode === xLast && yCode === yLast && zCode === zLast) {
      for (let k = 0; k < outputs; k++) target[t + k] = target[t - targetStride + k]!;
      continue;
    }
    wLast = wCode;
    xLast = xCode;
    yLast = yCode;
    zLast = zCode;
    let f1 = wWeights[wCode]!;
    let f2 = xWeights[xCode]!;
    let f3 = yWeights[yCode]!;
    let f4 = zWeights[zCode]!;
    let s1 = w.stride;
    let s2 = x.stride;
    let s3 = y.stride;
    let s4 = z.stride;
    if (f1 < f2) [f1, f2, s1, s2] = [f2, f1, s2, s1];
    if (f3 < f4) [f3, f4, s3, s4] = [f4, f3, s4, s3];
    if (f1 < f3) [f1, f3, s1, s3] = [f3, f1, s3, s1];
    if (f2 < f4) [f2, f4, s2, s4] = [f4, f2, s4, s2];
    if (f2 < f3) [f2, f3, s2, s3] = [f3, f2, s3, s2];
    const a = wOffsets[wCode]! + xOffsets[xCode]! + yOffsets[yCode]! + zOffsets[zCode]!;
    const b = a + s1;
    const c = b + s2;
    const d = c + s3;
    const e = d + s4;
    const wa = one - f1;
    const wb = f1 - f2;
    const wc = f2 - f3;
    const wd = f3 - f4;
    const sum0 =
      Math.imul(nodes[a]!, wa) +
      Math.imul(nodes[b]!, wb) +
      Math.imul(nodes[c]!, wc) +
      Math.imul(nodes[d]!, wd) +
      Math.imul(nodes[e]!, f4);
    const code0 = (sum0 + half) >> shift;
    target[t] = (code0 & outside) === 0 ? code0 : clip(code0, fullScale);
    if (outputs > 1) {
      const sum1 =
        Math.imul(nodes[a + 1]!, wa) +
        Math.imul(nodes[b + 1]!, wb) +
        Math.imul(nodes[c + 1]!, wc) +
        Math.imul(nodes[d + 1]!, wd) +
        Math.imul(nodes[e + 1]!, f4);
      const code1 = (sum1 + half) >> shift;
      target[t + 1] = (code1 & outside) === 0 ? code1 : clip(code1, fullScale);
    }
    if (outputs > 2) {
      const sum2 =
        Math.imul(nodes[a + 2]!, wa) +
        Math.imul(nodes[b + 2]!, wb) +
        Math.imul(nodes[c + 2]!, wc) +
        Math.imul(nodes[d + 2]!, wd) +
        Math.imul(nodes[e + 2]!, f4);
      const code2 = (sum2 + half) >> shift;
      target[t + 2] = (code2 & outside) === 0 ? code2 : clip(code2, fullScale);
    }
    if (outputs > 3) {
      const sum3 =
        Math.imul(nodes[a + 3]!, wa) +
        Math.imul(nodes[b + 3]!, wb) +
        Math.imul(nodes[c + 3]!, wc) +
        Math.imul(nodes[d + 3]!, wd) +
        Math.imul(nodes[e + 3]!, f4);
      const code3 = (sum3 + half) >> shift;
      target[t + 3] = (code3 & outside) === 0 ? code3 : clip(code3, fullScale);
    }
  }
}
