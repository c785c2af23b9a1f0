import { once } from './once.ts';
import type { PixelTransform } from './pixel-transform.ts';

/** Pixels of one channel: every code is converted beforehand and rounded exactly. `convert` works on 0…1. */
export function compileOneChannel(
  convert: (value: number) => readonly number[],
  outputs: number,
): PixelTransform {
  const tabulate = (fullScale: 255 | 65535) => {
    const codes = new Uint16Array((fullScale + 1) * outputs);
    for (let code = 0; code <= fullScale; code++)
      for (const [k, value] of convert(code / fullScale).entries())
        codes[code * outputs + k] = Math.round(Math.min(1, Math.max(0, value)) * fullScale);
    return codes;
  };
  const codes8 = once(() => tabulate(255));
  const codes16 = once(() => tabulate(65535));
  return {
    inputChannels: 1,
    outputChannels: outputs,
    convert8: (source, target, pixels, sourceStride = 1, targetStride = outputs) =>
      lookUp(source, target, pixels, sourceStride, targetStride, codes8(), outputs),
    convert16: (source, target, pixels, sourceStride = 1, targetStride = outputs) =>
      lookUp(source, target, pixels, sourceStride, targetStride, codes16(), outputs),
  };
}

function lookUp(
  source: Uint8Array | Uint16Array,
  target: Uint8Array | Uint16Array,
  pixels: number,
  sourceStride: number,
  targetStride: number,
  codes: Uint16Array,
  outputs: number,
): void {
  for (let i = 0, s = 0, t = 0; i < pixels; i++, s += sourceStride, t += targetStride) {
    const at = source[s]! * outputs;
    for (let k = 0; k < outputs; k++) target[t + k] = codes[at + k]!;
  }
}
