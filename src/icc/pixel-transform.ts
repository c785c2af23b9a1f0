/**
 * A conversion compiled for pixels. Samples are interleaved; a stride is the number of samples from one pixel to the
 * next, so that samples behind the colour (alpha) are passed over, neither read nor written. `source` and `target` may
 * be the same array with the same stride when both sides have the same number of channels. The same input gives the
 * same output on every machine.
 */
export interface PixelTransform {
  readonly inputChannels: number;
  readonly outputChannels: number;
  /** `sourceStride` and `targetStride` default to the number of channels. */
  convert8(
    source: Uint8Array,
    target: Uint8Array,
    pixels: number,
    sourceStride?: number,
    targetStride?: number,
  ): void;
  convert16(
    source: Uint16Array,
    target: Uint16Array,
    pixels: number,
    sourceStride?: number,
    targetStride?: number,
  ): void;
}
