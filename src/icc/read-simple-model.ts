import { determinantOf, invertMatrix, transpose } from '../colour/matrix3.ts';
import type { Curve } from './curve.ts';
import type { ColourModel } from './profile.ts';
import type { ProfileBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';
import { readCurve } from './read-curve.ts';
import type { ProfileHeader } from './read-header.ts';
import type { TagTable } from './read-tag-table.ts';
import { readXyz } from './read-xyz.ts';

type Space = Pick<ProfileHeader, 'space' | 'connection'>;

/**
 * The model without tables: three curves and a matrix for RGB, one curve for gray; null where the profile has none.
 * Part of a model counts as none when tables are there to do the work.
 * @throws profile-malformed, profile-unsupported, profile-missing-tag
 */
export function readSimpleModel({ space, connection }: Space, tags: TagTable): ColourModel | null {
  if (space === 'gray') {
    const curve = tags.get('kTRC');
    return curve ? { kind: 'gray', curve: readCurve(curve).curve } : null;
  }
  if (space !== 'rgb') return null;
  const parts = readMatrixParts(tags);
  const hasTables = [...tags.keys()].some((name) => /^(?:A2B|B2A)[012]$/.test(name));
  if (parts.length === 6 && connection === 'xyz') return readMatrixModel(parts);
  if (parts.length === 0 || hasTables) return null;
  if (parts.length < 6)
    throw profileError(
      'profile-missing-tag',
      'tag table',
      'expected three colorants and three curves, received some of them',
    );
  throw profileError(
    'profile-malformed',
    'header',
    'expected XYZ as connection space of a matrix, received Lab',
  );
}

function readMatrixParts(tags: TagTable): readonly ProfileBytes[] {
  return ['rTRC', 'gTRC', 'bTRC', 'rXYZ', 'gXYZ', 'bXYZ'].flatMap((name) => tags.get(name) ?? []);
}

/** @see ICC.1:2022, F.3 three-component matrix-based profiles */
function readMatrixModel(parts: readonly ProfileBytes[]): ColourModel {
  const [red, green, blue, redXyz, greenXyz, blueXyz] = parts as [
    ProfileBytes,
    ProfileBytes,
    ProfileBytes,
    ProfileBytes,
    ProfileBytes,
    ProfileBytes,
  ];
  const matrix = transpose([readXyz(redXyz), readXyz(greenXyz), readXyz(blueXyz)]);
  const inverse = invertMatrix(matrix);
  if (!inverse || Math.abs(determinantOf(matrix)) < 1e-6)
    throw profileError('profile-malformed', redXyz.where, 'expected three colorants that span a space');
  const redCurve = readCurve(red).curve;
  const greenCurve = green === red ? redCurve : readCurve(green).curve;
  const blueCurve = blue === red ? redCurve : readCurve(blue).curve;
  const curves: readonly [Curve, Curve, Curve] = [redCurve, greenCurve, blueCurve];
  return { kind: 'matrix', curves, matrix, inverse };
}
