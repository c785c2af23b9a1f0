import type { Matrix3 } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import type { Curve } from './curve.ts';
import type { Lut, LutElement } from './lut.ts';
import { type ProfileBytes, readFixed, readSamples, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';

/** 15 is the most colours a device space can have. @see ICC.1:2022, 7.2.6 */
const MOST_CHANNELS = 15;

/**
 * A table of type `mft1` (8 bit) or `mft2` (16 bit): matrix, input curves, grid, output curves. The matrix acts only
 * on XYZ. @throws profile-malformed @see ICC.1:2022, 10.10 lut16Type, 10.11 lut8Type
 */
export function readLut(bytes: ProfileBytes, type: 'mft1' | 'mft2', inputIsXyz: boolean): Lut {
  requireBytes(bytes, 0, type === 'mft1' ? 48 : 52, 'a table header');
  const { view } = bytes;
  const sampleBytes = type === 'mft1' ? 1 : 2;
  const { inputs, outputs } = readChannels(bytes);
  const size = view.getUint8(10);
  const inputEntries = type === 'mft1' ? 256 : view.getUint16(48);
  const outputEntries = type === 'mft1' ? 256 : view.getUint16(50);
  for (const entries of [inputEntries, outputEntries])
    if (entries < 2 || entries > 4096)
      throw profileError(
        'profile-malformed',
        bytes.where,
        `expected 2 to 4096 curve entries, received ${entries}`,
      );

  let offset = type === 'mft1' ? 48 : 52;
  const take = (count: number, what: string): Uint16Array => {
    requireBytes(bytes, offset, count * sampleBytes, what);
    const samples = readSamples(view, offset, count, sampleBytes);
    offset += count * sampleBytes;
    return samples;
  };
  const takeCurves = (channels: number, entries: number, what: string): LutElement => {
    const samples = take(channels * entries, what);
    const curves = Array.from({ length: channels }, (_, i): Curve => {
      return { kind: 'table', values: samples.subarray(i * entries, (i + 1) * entries) };
    });
    return { kind: 'curves', curves };
  };
  const sizes = Array<number>(inputs).fill(size);
  const inputCurves = takeCurves(inputs, inputEntries, 'input curves');
  const values = take(countNodes(bytes, sizes) * outputs, 'table values');
  const outputCurves = takeCurves(outputs, outputEntries, 'output curves');
  const matrix: LutElement[] = inputIsXyz
    ? [{ kind: 'matrix', matrix: readMatrix(view, 12), offset: [0, 0, 0] }]
    : [];
  return {
    inputs,
    outputs,
    elements: [...matrix, inputCurves, { kind: 'grid', sizes, outputs, values }, outputCurves],
    labEncoding: type === 'mft2' ? 'lut16' : 'full',
  };
}

/** Channels in and out, which all four table types hold at the same place. The caller has checked the length. */
export function readChannels({ view, where }: ProfileBytes): { inputs: number; outputs: number } {
  const inputs = view.getUint8(8);
  const outputs = view.getUint8(9);
  for (const [channels, what] of [
    [inputs, 'input'],
    [outputs, 'output'],
  ] as const)
    if (channels < 1 || channels > MOST_CHANNELS)
      throw profileError(
        'profile-malformed',
        where,
        `expected 1 to 15 ${what} channels, received ${channels}`,
      );
  return { inputs, outputs };
}

/** Product of the sizes. Large lies stay finite, so that the length check that follows refuses them. */
export function countNodes({ where }: ProfileBytes, sizes: readonly number[]): number {
  for (const size of sizes)
    if (size < 2)
      throw profileError('profile-malformed', where, `expected 2 or more grid points, received ${size}`);
  return sizes.reduce((nodes, size) => nodes * size, 1);
}

/** Nine fixed-point numbers, row by row. The caller has checked the length. */
export function readMatrix(view: DataView, offset: number): Matrix3 {
  const row = (i: number): Triple => [
    readFixed(view, offset + 12 * i),
    readFixed(view, offset + 12 * i + 4),
    readFixed(view, offset + 12 * i + 8),
  ];
  return [row(0), row(1), row(2)];
}
