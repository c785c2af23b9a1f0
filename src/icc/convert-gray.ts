import { once } from './once.ts';
import type { PixelTransform } from './pixel-transform.ts';

/** Pixels of one channel through a function on 0…1, tabulated for every code and rounded exactly. */
export function compileGrayTransform(convertValue: (value: number) => number): PixelTransform {
  const tabulate = (fullScale: 255 | 65535) =>
    Uint16Array.from({ length: fullScale + 1 }, (_, code) =>
      Math.round(Math.min(1, Math.max(0, convertValue(code / fullScale))) * fullScale),
    );
  const codes8 = once(() => tabulate(255));
  const codes16 = once(() => tabulate(65535));
  return {
    inputChannels: 1,
    outputChannels: 1,
    convert8: (source, target, pixels, sourceStride = 1, targetStride = 1) =>
      convert(source, target, pixels, sourceStride, targetStride, codes8()),
    convert16: (source, target, pixels, sourceStride = 1, targetStride = 1) =>
      convert(source, target, pixels, sourceStride, targetStride, codes16()),
  };
}

function convert(
  source: Uint8Array | Uint16Array,
  target: Uint8Array | Uint16Array,
  pixels: number,
  sourceStride: number,
  targetStride: number,
  codes: Uint16Array,
): void {
  for (let i = 0, s = 0, t = 0; i < pixels; i++, s += sourceStride, t += targetStride)
    target[t] = codes[source[s]!]!;
}
