import { descriptionTag, translatedTag, xyzTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { writeIcc } from '../../fixtures/byte-writers/write-icc.ts';

const D50 = [0.9642, 1, 0.8249];

/** A display with a curve of each parametric type in turn. */
export function writeMatrixProfile(curve: Uint8Array, majorVersion: 2 | 4 = 4): Uint8Array {
  return writeIcc({
    majorVersion,
    profileClass: 'mntr',
    space: 'RGB ',
    connection: 'XYZ ',
    tags: {
      desc: majorVersion === 2 ? descriptionTag('matrix') : translatedTag({ en: 'matrix' }),
      wtpt: xyzTag(D50),
      rXYZ: xyzTag([0.43604, 0.22248, 0.01392]),
      gXYZ: xyzTag([0.38511, 0.71691, 0.09707]),
      bXYZ: xyzTag([0.14305, 0.06061, 0.71391]),
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
