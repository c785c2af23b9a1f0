import {
  curveTag,
  descriptionTag,
  lutABTag,
  lutTag,
  parametricTag,
  translatedTag,
  xyzTag,
} from '../../fixtures/byte-writers/icc-tags.ts';
import { writeIcc } from '../../fixtures/byte-writers/write-icc.ts';
import { makeGenerator } from './random-colours.ts';

const D50 = [0.9642, 1, 0.8249];

/** Entries of a power curve as whole numbers up to `full`. */
const power = (gamma: number, entries: number, full: number) =>
  Array.from({ length: entries }, (_, i) => Math.round((i / (entries - 1)) ** gamma * full));

/** Nodes without any order, which show which corners an interpolation takes. */
function randomNodes(seed: number, count: number, full: number): number[] {
  const next = makeGenerator(seed);
  return Array.from({ length: count }, () => (next() >>> 8) % (full + 1));
}

/** Nodes on a plane, which every interpolation gives alike: `weights[k]` for output k, one weight for each input. */
function planeNodes(
  sizes: readonly number[],
  weights: readonly (readonly number[])[],
  full: number,
): number[] {
  const count = sizes.reduce((product, size) => product * size, 1);
  return Array.from({ length: count }, (_, node) => {
    let rest = node;
    const place = sizes
      .toReversed()
      .map((size) => {
        const at = rest % size;
        rest = Math.floor(rest / size);
        return at / (size - 1);
      })
      .toReversed();
    return weights.map((row) => Math.round(place.reduce((sum, value, i) => sum + value * row[i]!, 0) * full));
  }).flat();
}

const MIXED = [
  [0.5, 0.3, 0.2],
  [0.1, 0.6, 0.3],
  [0.2, 0.2, 0.6],
];

interface TableProfile {
  readonly name: string;
  readonly majorVersion: 2 | 4;
  readonly space: string;
  readonly connection: 'Lab ' | 'XYZ ';
  readonly tables: Readonly<Record<'A2B' | 'B2A', Uint8Array>>;
  /** Half a count of the coarsest node values: how far rounding takes them off their plane. */
  readonly offPlane: number;
}

const mft1 = lutTag('mft1', {
  inputs: 3,
  outputs: 3,
  size: 5,
  inputCurves: [power(1.3, 256, 255), power(0.8, 256, 255), power(1, 256, 255)],
  nodes: randomNodes(1, 5 ** 3 * 3, 255),
  outputCurves: [power(1.1, 256, 255), power(0.9, 256, 255), power(1, 256, 255)],
});
const mft1Back = lutTag('mft1', {
  inputs: 3,
  outputs: 3,
  size: 6,
  inputCurves: [power(0.7, 256, 255), power(1, 256, 255), power(1.2, 256, 255)],
  nodes: planeNodes([6, 6, 6], MIXED, 255),
  outputCurves: [power(1, 256, 255), power(1.4, 256, 255), power(0.7, 256, 255)],
});
const mft2 = lutTag('mft2', {
  inputs: 3,
  outputs: 3,
  size: 7,
  inputCurves: [power(1.3, 100, 65535), power(0.8, 100, 65535), power(1, 100, 65535)],
  nodes: randomNodes(2, 7 ** 3 * 3, 65280),
  outputCurves: [power(1.2, 33, 65535), power(0.9, 33, 65535), power(1, 33, 65535)],
});
const MFT2_BACK = {
  inputs: 3,
  outputs: 3,
  size: 4,
  inputCurves: [power(0.7, 50, 65535), power(1, 50, 65535), power(1.2, 50, 65535)],
  nodes: planeNodes([4, 4, 4], MIXED, 65535),
  outputCurves: [power(1, 9, 65535), power(1.4, 9, 65535), power(0.7, 9, 65535)],
};
const mft2Back = lutTag('mft2', MFT2_BACK);
/** The matrix acts only where the input is XYZ. */
const mft2BackFromXyz = lutTag('mft2', { ...MFT2_BACK, matrix: [0.9, 0.1, 0, 0.05, 0.9, 0.05, 0, 0.1, 0.9] });
const allCurves = [
  parametricTag(0, [1.8]),
  parametricTag(1, [2.2, 0.9, 0.1]),
  parametricTag(2, [1.6, 0.8, 0.1, 0.05]),
] as const;
const moreCurves = [
  parametricTag(3, [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045]),
  parametricTag(4, [2, 0.9, 0.05, 0.2, 0.1, 0.02, 0.01]),
  curveTag([0, 9000, 30000, 65535]),
] as const;
const identities = [curveTag([]), curveTag([]), curveTag([])];
const matrix = [0.8, 0.1, 0.1, 0.1, 0.7, 0.1, 0.05, 0.15, 0.7, 0.02, 0.01, 0.05];

const mAB = lutABTag('mAB ', {
  inputs: 3,
  outputs: 3,
  a: allCurves,
  grid: { sizes: [4, 5, 6], bytes: 2, nodes: randomNodes(3, 4 * 5 * 6 * 3, 65535) },
  m: moreCurves,
  matrix,
  b: [curveTag([256 * 1.25]), ...identities.slice(1)],
});
const mBA = lutABTag('mBA ', {
  inputs: 3,
  outputs: 3,
  b: moreCurves,
  matrix,
  m: allCurves,
  grid: { sizes: [3, 4, 5], bytes: 1, nodes: planeNodes([3, 4, 5], MIXED, 255) },
  a: identities,
});

/** One profile for each way in which tables can be written, built so that its numbers are known to mean something. */
export const TABLE_PROFILES: readonly TableProfile[] = [
  {
    name: 'mft1 to Lab',
    offPlane: 0.5 / 255,
    majorVersion: 2,
    space: 'RGB ',
    connection: 'Lab ',
    tables: { A2B: mft1, B2A: mft1Back },
  },
  {
    name: 'mft2 to Lab',
    offPlane: 0.5 / 65535,
    majorVersion: 2,
    space: 'RGB ',
    connection: 'Lab ',
    tables: { A2B: mft2, B2A: mft2Back },
  },
  {
    name: 'mft2 to XYZ',
    offPlane: 0.5 / 65535,
    majorVersion: 2,
    space: 'RGB ',
    connection: 'XYZ ',
    tables: { A2B: mft2, B2A: mft2BackFromXyz },
  },
  {
    name: 'mft1 in version 4',
    offPlane: 0.5 / 255,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'Lab ',
    tables: { A2B: mft1, B2A: mft1Back },
  },
  {
    name: 'mft2 in version 4',
    offPlane: 0.5 / 65535,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'Lab ',
    tables: { A2B: mft2, B2A: mft2Back },
  },
  {
    name: 'mAB and mBA, Lab',
    offPlane: 0.5 / 255,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'Lab ',
    tables: { A2B: mAB, B2A: mBA },
  },
  {
    name: 'mAB and mBA, XYZ',
    offPlane: 0.5 / 255,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'XYZ ',
    tables: { A2B: mAB, B2A: mBA },
  },
  {
    name: 'mAB and mBA of B curves alone',
    offPlane: 0.5 / 65535,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'Lab ',
    tables: {
      A2B: lutABTag('mAB ', { inputs: 3, outputs: 3, b: moreCurves }),
      B2A: lutABTag('mBA ', { inputs: 3, outputs: 3, b: allCurves }),
    },
  },
  {
    name: 'mAB and mBA without a grid',
    offPlane: 0.5 / 65535,
    majorVersion: 4,
    space: 'RGB ',
    connection: 'XYZ ',
    tables: {
      A2B: lutABTag('mAB ', { inputs: 3, outputs: 3, m: moreCurves, matrix, b: identities }),
      B2A: lutABTag('mBA ', { inputs: 3, outputs: 3, b: identities, matrix, m: moreCurves }),
    },
  },
  {
    name: 'mAB and mBA without a matrix',
    offPlane: 0.5 / 65535,
    majorVersion: 4,
    space: 'CMYK',
    connection: 'Lab ',
    tables: {
      A2B: lutABTag('mAB ', {
        inputs: 4,
        outputs: 3,
        a: [...allCurves, curveTag([])],
        grid: {
          sizes: [3, 4, 5, 2],
          bytes: 2,
          nodes: planeNodes(
            [3, 4, 5, 2],
            MIXED.map((row) => [...row.map((weight) => weight * 0.7), 0.3]),
            65535,
          ),
        },
        b: moreCurves,
      }),
      B2A: lutABTag('mBA ', {
        inputs: 3,
        outputs: 4,
        b: moreCurves,
        grid: {
          sizes: [3, 4, 5],
          bytes: 2,
          nodes: planeNodes([3, 4, 5], [...MIXED, [0.3, 0.3, 0.4]], 65535),
        },
        a: [...allCurves, curveTag([])],
      }),
    },
  },
];

/** The bytes of such a profile. */
export function writeTableProfile({
  name,
  majorVersion,
  space,
  connection,
  tables,
}: TableProfile): Uint8Array {
  return writeIcc({
    majorVersion,
    profileClass: 'prtr',
    space,
    connection,
    tags: {
      desc: majorVersion === 2 ? descriptionTag(name) : translatedTag({ en: name }),
      wtpt: xyzTag(D50),
      ...forEveryIntent(tables),
    },
  });
}

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

/** The one table of a direction under all three names: Argyll wants the intent that it is asked for. */
function forEveryIntent(tables: Readonly<Record<'A2B' | 'B2A', Uint8Array>>): Record<string, Uint8Array> {
  const names = ['A2B0', 'A2B1', 'A2B2', 'B2A0', 'B2A1', 'B2A2'];
  return Object.fromEntries(names.map((name) => [name, name.startsWith('A2B') ? tables.A2B : tables.B2A]));
}
