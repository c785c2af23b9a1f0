import { curveTag, lutABTag, lutTag, parametricTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { MIXED, planeNodes, power, randomNodes } from './table-parts.ts';
import type { TableProfile } from './write-table-profile.ts';

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
