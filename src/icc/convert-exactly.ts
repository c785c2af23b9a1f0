import type { PixelTransform } from './pixel-transform.ts';
import { STAGE_CHANNELS, type Stage } from './stage.ts';

/** Pixels one by one in double precision, for channel numbers that no grid is made for; a run of equal pixels is converted once. */
export function compileExactly(stages: readonly Stage[], inputs: number, outputs: number): PixelTransform {
  const values = new Float64Array(STAGE_CHANNELS);
  const convert = (
    source: Uint8Array | Uint16Array,
    target: Uint8Array | Uint16Array,
    pixels: number,
    sourceStride: number,
    targetStride: number,
    fullScale: 255 | 65535,
  ): void => {
    const last = new Float64Array(inputs).fill(-1);
    const codes = new Uint16Array(outputs);
    for (let i = 0, s = 0, t = 0; i < pixels; i++, s += sourceStride, t += targetStride) {
      let isNew = false;
      for (let k = 0; k < inputs; k++) {
        if (last[k] !== source[s + k]) isNew = true;
        last[k] = source[s + k]!;
        values[k] = last[k]! / fullScale;
      }
      if (isNew) {
        for (const stage of stages) stage(values);
        for (let k = 0; k < outputs; k++)
          codes[k] = Math.round(Math.min(1, Math.max(0, values[k]!)) * fullScale);
      }
      for (let k = 0; k < outputs; k++) target[t + k] = codes[k]!;
    }
  };
  return {
    inputChannels: inputs,
    outputChannels: outputs,
    convert8: (source, target, pixels, sourceStride = inputs, targetStride = outputs) =>
      convert(source, target, pixels, sourceStride, targetStride, 255),
    convert16: (source, target, pixels, sourceStride = inputs, targetStride = outputs) =>
      convert(source, target, pixels, sourceStride, targetStride, 65535),
  };
}
