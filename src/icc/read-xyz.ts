import { determinantOf, type Matrix3 } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import { type ProfileBytes, readFixed, readSignature, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';
import { readMatrix } from './read-lut.ts';

/** The first XYZ of a tag. @throws profile-malformed @see ICC.1:2022, 10.31 XYZType */
export function readXyz(bytes: ProfileBytes): Triple {
  requireBytes(bytes, 0, 20, 'an XYZ value');
  requireType(bytes, 'XYZ ');
  return [readFixed(bytes.view, 8), readFixed(bytes.view, 12), readFixed(bytes.view, 16)];
}

/** A white, all of it above 0. @throws profile-malformed @see ICC.1:2022, 9.2.36 mediaWhitePointTag */
export function readWhite(bytes: ProfileBytes): Triple {
  const white = readXyz(bytes);
  if (white.every((value) => value > 0)) return white;
  throw profileError(
    'profile-malformed',
    bytes.where,
    `expected a white above 0, received ${white.join(' ')}`,
  );
}

/** A matrix that can be inverted. @throws profile-malformed @see ICC.1:2022, 9.2.15 chromaticAdaptationTag */
export function readAdaptation(bytes: ProfileBytes): Matrix3 {
  requireBytes(bytes, 0, 44, 'a matrix');
  requireType(bytes, 'sf32');
  const matrix = readMatrix(bytes.view, 8);
  if (Math.abs(determinantOf(matrix)) > 1e-6) return matrix;
  throw profileError('profile-malformed', bytes.where, 'expected a matrix that can be inverted');
}

function requireType({ where, view }: ProfileBytes, expected: string): void {
  const type = readSignature(view, 0);
  if (type !== expected)
    throw profileError('profile-malformed', where, `expected type '${expected}', received '${type}'`);
}
