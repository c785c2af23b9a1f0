import { labCube, labRoot, XYZ_D50 } from '../colour/lab.ts';
import type { Lut } from './lut.ts';
import type { ConnectionSpace, DeviceSpace } from './profile.ts';
import type { Stage } from './stage.ts';

/** Whole numbers of each encoding for L* 100, and for one unit of a* and b*, which are 0 at 128 units. */
const LAB_ENCODINGS: Readonly<Record<Lut['labEncoding'], { lightness: number; unit: number }>> = {
  // 0xFF00 and 256 of 0xFFFF. @see ICC.1:2022, 10.10 (legacy 16-bit PCSLAB encoding, for lut16Type of all versions)
  lut16: { lightness: 0xff00 / 0xffff, unit: 0x0100 / 0xffff },
  // 0xFFFF and 257 of 0xFFFF, or 255 and 1 of 255. @see ICC.1:2022, 6.3.4.2, tables 12 and 13
  full: { lightness: 1, unit: 1 / 255 },
};

/** XYZ 1 is 0x8000 of 0xFFFF. @see ICC.1:2022, 6.3.4.2 */
const XYZ_UNIT = 0x8000 / 0xffff;

/**
 * Natural units to the values 0…1 that a table takes: Lab and XYZ have units of their own on either side of a table,
 * all other spaces are 0…1 already. What the encoding cannot hold is left to the table to clip.
 */
export function encodeConnection(
  space: DeviceSpace | ConnectionSpace,
  lut: Pick<Lut, 'labEncoding'>,
): Stage[] {
  if (space === 'lab') return [encodeLabStage(lut.labEncoding)];
  return space === 'xyz' ? [(values) => scaleXyz(values, XYZ_UNIT)] : [];
}

/** Inverse of `encodeConnection`. */
export function decodeConnection(
  space: DeviceSpace | ConnectionSpace,
  lut: Pick<Lut, 'labEncoding'>,
): Stage[] {
  if (space === 'lab') return [decodeLabStage(lut.labEncoding)];
  return space === 'xyz' ? [(values) => scaleXyz(values, 1 / XYZ_UNIT)] : [];
}

function encodeLabStage(encoding: Lut['labEncoding']): Stage {
  const { lightness, unit } = LAB_ENCODINGS[encoding];
  return (values) => {
    values[0] = (values[0]! / 100) * lightness;
    values[1] = (values[1]! + 128) * unit;
    values[2] = (values[2]! + 128) * unit;
  };
}

function decodeLabStage(encoding: Lut['labEncoding']): Stage {
  const { lightness, unit } = LAB_ENCODINGS[encoding];
  return (values) => {
    values[0] = (values[0]! / lightness) * 100;
    values[1] = values[1]! / unit - 128;
    values[2] = values[2]! / unit - 128;
  };
}

function scaleXyz(values: Float64Array, factor: number): void {
  for (let i = 0; i < 3; i++) values[i] = values[i]! * factor;
}

/** XYZ to L*a*b*, both D50. */
export const xyzToLabStage: Stage = (values) => {
  const fx = labRoot(values[0]! / XYZ_D50[0]);
  const fy = labRoot(values[1]!);
  const fz = labRoot(values[2]! / XYZ_D50[2]);
  values[0] = 116 * fy - 16;
  values[1] = 500 * (fx - fy);
  values[2] = 200 * (fy - fz);
};

/** L*a*b* to XYZ, both D50. */
export const labToXyzStage: Stage = (values) => {
  const fy = (values[0]! + 16) / 116;
  const fx = fy + values[1]! / 500;
  const fz = fy - values[2]! / 200;
  values[0] = labCube(fx) * XYZ_D50[0];
  values[1] = labCube(fy);
  values[2] = labCube(fz) * XYZ_D50[2];
};
