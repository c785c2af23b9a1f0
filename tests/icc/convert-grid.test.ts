import { describe, expect, it } from 'vitest';
import { readProfile } from '../../src/icc/read-profile.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { makeTransform } from '../../src/icc/transform.ts';
import { COATED_REFERENCE } from './coated-reference.ts';
import { makeGenerator } from './random-colours.ts';

const condition = readProfile(COATED_REFERENCE);
const WAY = { intent: 'relative', blackPointCompensation: true } as const;

/** Runs of one to five equal pixels, some of them one channel apart from those before. */
function paintRuns(channels: number, pixels: number): Uint8Array {
  const next = makeGenerator(3);
  const codes = new Uint8Array(channels * pixels);
  const colour = new Uint8Array(channels);
  for (let i = 0, left = 0; i < pixels; i++, left--) {
    if (left === 0) {
      left = 1 + ((next() >>> 8) % 5);
      colour[(next() >>> 8) % channels] = next() >>> 24;
    }
    codes.set(colour, channels * i);
  }
  return codes;
}

describe.each([
  ['three channels to four', SRGB_PROFILE, condition],
  ['four channels to three', condition, SRGB_PROFILE],
  ['four channels to four', condition, condition],
] as const)('a run of one colour, %s', (_, from, to) => {
  const transform = makeTransform(from, to, WAY).compile();
  const { inputChannels, outputChannels } = transform;
  const pixels = 500;
  const codes = paintRuns(inputChannels, pixels);
  const alone = new Uint8Array(outputChannels * pixels);
  for (let i = 0; i < pixels; i++)
    transform.convert8(
      codes.subarray(i * inputChannels),
      alone.subarray(i * outputChannels, (i + 1) * outputChannels),
      1,
    );

  it('is what its pixels are one by one, with strides of any width', () => {
    const [fromStride, toStride] = [inputChannels + 1, outputChannels + 2];
    const wide = new Uint8Array(fromStride * pixels).fill(77);
    for (let i = 0; i < pixels; i++)
      wide.set(codes.subarray(i * inputChannels, (i + 1) * inputChannels), i * fromStride);
    const found = new Uint8Array(toStride * pixels).fill(9);
    transform.convert8(wide, found, pixels, fromStride, toStride);
    for (let i = 0; i < pixels; i++) {
      const pixel = found.subarray(i * toStride, (i + 1) * toStride);
      expect([...pixel]).toEqual([...alone.subarray(i * outputChannels, (i + 1) * outputChannels), 9, 9]);
    }
  });

  it('may be converted in place', () => {
    const stride = Math.max(inputChannels, outputChannels);
    const own = new Uint8Array(stride * pixels);
    for (let i = 0; i < pixels; i++)
      own.set(codes.subarray(i * inputChannels, (i + 1) * inputChannels), i * stride);
    transform.convert8(own, own, pixels, stride, stride);
    for (let i = 0; i < pixels; i++)
      expect([...own.subarray(i * stride, i * stride + outputChannels)]).toEqual([
        ...alone.subarray(i * outputChannels, (i + 1) * outputChannels),
      ]);
  });
});
