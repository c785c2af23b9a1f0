import { type Curve, powerCurve } from './curve.ts';
import { type ProfileBytes, readFixed, readSamples, readSignature, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';

/** How many numbers each function type of a parametric curve has. */
const PARAMETERS = [1, 3, 4, 5, 7] as const;

/** A curve and the bytes it took, without padding. */
export interface CurveRead {
  readonly curve: Curve;
  readonly byteLength: number;
}

/** The curve at the start of `bytes`. @throws profile-malformed, profile-unsupported @see ICC.1:2022, 10.6, 10.18 */
export function readCurve(bytes: ProfileBytes): CurveRead {
  requireBytes(bytes, 0, 12, 'a curve');
  const type = readSignature(bytes.view, 0);
  if (type === 'curv') return readSampledCurve(bytes);
  if (type === 'para') return readParametricCurve(bytes);
  throw profileError('profile-malformed', bytes.where, `expected a curve (curv or para), received '${type}'`);
}

function readSampledCurve(bytes: ProfileBytes): CurveRead {
  const { view } = bytes;
  const count = view.getUint32(8);
  requireBytes(bytes, 12, count * 2, 'curve values');
  const byteLength = 12 + count * 2;
  if (count === 0) return { curve: powerCurve(1), byteLength };
  if (count === 1) return { curve: powerCurve(view.getUint16(12) / 256), byteLength };
  return { curve: { kind: 'table', values: readSamples(view, 12, count, 2) }, byteLength };
}

function readParametricCurve(bytes: ProfileBytes): CurveRead {
  const { view, where } = bytes;
  const type = view.getUint16(8);
  const count = PARAMETERS[type];
  if (count === undefined)
    throw profileError(
      'profile-unsupported',
      where,
      `expected a parametric curve of type 0 to 4, received ${type}`,
    );
  requireBytes(bytes, 12, count * 4, 'curve parameters');
  const [gamma = 1, a = 1, b = 0, third = 0, fourth = 0, e = 0, f = 0] = Array.from(
    { length: count },
    (_, i) => readFixed(view, 12 + 4 * i),
  );
  if (a === 0)
    throw profileError('profile-malformed', where, 'expected a slope other than 0 in a parametric curve');
  const base = { kind: 'parametric', gamma, a, b } as const;
  const zero = -b / a;
  const byteLength = 12 + count * 4;
  if (type === 0) return { curve: powerCurve(gamma), byteLength };
  if (type === 1) return { curve: { ...base, c: 0, d: zero, e: 0, f: 0 }, byteLength };
  if (type === 2) return { curve: { ...base, c: 0, d: zero, e: third, f: third }, byteLength };
  if (type === 3) return { curve: { ...base, c: third, d: fourth, e: 0, f: 0 }, byteLength };
  return { curve: { ...base, c: third, d: fourth, e, f }, byteLength };
}
