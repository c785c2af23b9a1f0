import { descriptionTag, translatedTag, xyzTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { writeIcc } from '../../fixtures/byte-writers/write-icc.ts';

const D50 = [0.9642, 1, 0.8249];
/** Those of sRGB, XYZ of D50, one after the other. */
const COLORANTS = [
  [0.43604, 0.22248, 0.01392],
  [0.38511, 0.71691, 0.09707],
  [0.14305, 0.06061, 0.71391],
] as const;

/** A display with one curve for all channels. */
export function writeMatrixProfile(
  curve: Uint8Array,
  majorVersion: 2 | 4 = 4,
  [red, green, blue]: readonly (readonly number[])[] = COLORANTS,
): Uint8Array {
  return writeIcc({
    majorVersion,
    profileClass: 'mntr',
    space: 'RGB ',
    connection: 'XYZ ',
    tags: {
      desc: majorVersion === 2 ? descriptionTag('matrix') : translatedTag({ en: 'matrix' }),
      wtpt: xyzTag(D50),
      rXYZ: xyzTag(red!),
      gXYZ: xyzTag(green!),
      bXYZ: xyzTag(blue!),
      rTRC: curve,
      gTRC: curve,
      bTRC: curve,
    },
  });
}

/** A gray profile towards either connection space. */
export function writeGrayProfile(curve: Uint8Array, connection: 'XYZ ' | 'Lab '): Uint8Array {
  return writeIcc({
    majorVersion: 4,
    profileClass: 'mntr',
    space: 'GRAY',
    connection,
    tags: { desc: translatedTag({ en: 'gray' }), wtpt: xyzTag(D50), kTRC: curve },
  });
}
