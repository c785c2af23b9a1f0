import type { Curve } from './curve.ts';
import type { Grid, Lut, LutElement } from './lut.ts';
import { bytesFrom, type ProfileBytes, readFixed, readSamples, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';
import { readCurve } from './read-curve.ts';
import { countNodes, readChannels, readMatrix } from './read-lut.ts';

/** Where the offsets of the parts stand in the header. */
const OFFSETS = { b: 12, matrix: 16, m: 20, grid: 24, a: 28 } as const;

/**
 * A table of type `mAB ` (device to connection space: A curves, grid, M curves, matrix, B curves) or `mBA ` (the
 * same parts in the opposite order). All parts but the B curves may be left out.
 * @throws profile-malformed, profile-unsupported @see ICC.1:2022, 10.12 lutAToBType, 10.13 lutBToAType
 */
export function readLutAB(bytes: ProfileBytes, type: 'mAB ' | 'mBA '): Lut {
  requireBytes(bytes, 0, 32, 'a table header');
  const { inputs, outputs } = readChannels(bytes);
  const deviceChannels = type === 'mAB ' ? inputs : outputs;
  const connectionChannels = type === 'mAB ' ? outputs : inputs;
  const at = (part: keyof typeof OFFSETS) => bytes.view.getUint32(OFFSETS[part]);

  const curves = (part: 'a' | 'm' | 'b', channels: number): LutElement[] =>
    at(part) === 0 ? [] : [{ kind: 'curves', curves: readCurves(bytes, at(part), channels) }];
  const grid: LutElement[] = at('grid') === 0 ? [] : [readGrid(bytes, at('grid'), inputs, outputs)];
  const matrix: LutElement[] = at('matrix') === 0 ? [] : [readMatrixElement(bytes, at('matrix'))];

  if (at('b') === 0) throw profileError('profile-malformed', bytes.where, 'expected B curves, received none');
  if (grid.length === 0 && inputs !== outputs)
    throw profileError(
      'profile-malformed',
      bytes.where,
      `expected a grid from ${inputs} to ${outputs} channels`,
    );
  if (matrix.length > 0 && connectionChannels !== 3)
    throw profileError(
      'profile-malformed',
      bytes.where,
      `expected 3 channels at its matrix, received ${connectionChannels}`,
    );

  const fromDevice = [
    curves('a', deviceChannels),
    grid,
    curves('m', connectionChannels),
    matrix,
    curves('b', connectionChannels),
  ];
  const order = type === 'mAB ' ? fromDevice : fromDevice.reverse();
  return { inputs, outputs, elements: order.flat(), labEncoding: 'full' };
}

/** Curves one after the other, each beginning at a multiple of four bytes. */
function readCurves(bytes: ProfileBytes, start: number, count: number): Curve[] {
  let offset = start;
  return Array.from({ length: count }, () => {
    requireBytes(bytes, offset, 12, 'a curve');
    const { curve, byteLength } = readCurve(bytesFrom(bytes, offset));
    offset += Math.ceil(byteLength / 4) * 4;
    return curve;
  });
}

function readGrid(bytes: ProfileBytes, offset: number, inputs: number, outputs: number): Grid {
  requireBytes(bytes, offset, 20, 'a grid header');
  const { view } = bytes;
  const sizes = Array.from({ length: inputs }, (_, i) => view.getUint8(offset + i));
  const sampleBytes = view.getUint8(offset + 16);
  if (sampleBytes !== 1 && sampleBytes !== 2)
    throw profileError(
      'profile-malformed',
      bytes.where,
      `expected 1 or 2 bytes a grid value, received ${sampleBytes}`,
    );
  const count = countNodes(bytes, sizes) * outputs;
  requireBytes(bytes, offset + 20, count * sampleBytes, 'grid values');
  return { kind: 'grid', sizes, outputs, values: readSamples(view, offset + 20, count, sampleBytes) };
}

function readMatrixElement(bytes: ProfileBytes, offset: number): LutElement {
  requireBytes(bytes, offset, 48, 'a matrix');
  const { view } = bytes;
  return {
    kind: 'matrix',
    matrix: readMatrix(view, offset),
    offset: [readFixed(view, offset + 36), readFixed(view, offset + 40), readFixed(view, offset + 44)],
  };
}
