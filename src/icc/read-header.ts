import type { ConnectionSpace, DeviceSpace, ProfileClass } from './profile.ts';
import { type ProfileBytes, readSignature } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';

export const HEADER_BYTES = 128;

/** @see ICC.1:2022, 7.2.5 */
const CLASSES: Readonly<Record<string, ProfileClass>> = {
  scnr: 'input',
  mntr: 'display',
  prtr: 'output',
  spac: 'colour-space',
};
const OTHER_CLASSES: Readonly<Record<string, string>> = {
  link: 'a device link',
  abst: 'an abstract profile',
  nmcl: 'a list of named colours',
};

/** Spaces whose values mean something here; all others are known by their number of channels only. @see ICC.1:2022, 7.2.6 */
const SPACES: Readonly<Record<string, readonly [DeviceSpace, number]>> = {
  GRAY: ['gray', 1],
  'RGB ': ['rgb', 3],
  CMYK: ['cmyk', 4],
  'Lab ': ['lab', 3],
  'XYZ ': ['xyz', 3],
  'CMY ': ['other', 3],
  'Luv ': ['other', 3],
  YCbr: ['other', 3],
  'Yxy ': ['other', 3],
  'HSV ': ['other', 3],
  'HLS ': ['other', 3],
};

export interface ProfileHeader {
  /** Bytes that the profile says it has; what follows is padding of the file around it. */
  readonly byteLength: number;
  readonly version: string;
  readonly majorVersion: 2 | 4;
  readonly class: ProfileClass;
  readonly space: DeviceSpace;
  readonly channels: number;
  readonly connection: ConnectionSpace;
}

/** @throws profile-malformed, profile-truncated, profile-unsupported, profile-wrong-class @see ICC.1:2022, 7.2 */
export function readHeader({ where, view }: ProfileBytes): ProfileHeader {
  const received = view.byteLength;
  if (received < 40 || readSignature(view, 36) !== 'acsp')
    throw profileError(
      'profile-malformed',
      where,
      `expected an ICC profile, received ${received} bytes of something else`,
    );
  const byteLength = view.getUint32(0);
  if (byteLength < HEADER_BYTES + 4)
    throw profileError(
      'profile-malformed',
      where,
      `expected a length of 132 bytes or more, received ${byteLength}`,
    );
  if (byteLength > received)
    throw profileError(
      'profile-truncated',
      where,
      `expected ${byteLength} bytes as it states, received ${received}`,
    );
  return {
    byteLength,
    ...readVersion(where, view),
    class: readClass(where, view),
    ...readSpace(where, view),
    connection: readConnection(where, view),
  };
}

/** @see ICC.1:2022, 7.2.4 */
function readVersion(where: string, view: DataView): Pick<ProfileHeader, 'version' | 'majorVersion'> {
  const majorVersion = view.getUint8(8);
  const version = `${majorVersion}.${view.getUint8(9) >> 4}`;
  if (majorVersion !== 2 && majorVersion !== 4)
    throw profileError('profile-unsupported', where, `expected version 2 or 4, received ${version}`);
  return { version, majorVersion };
}

function readClass(where: string, view: DataView): ProfileClass {
  const signature = readSignature(view, 12);
  const known = Object.hasOwn(CLASSES, signature) ? CLASSES[signature] : undefined;
  if (known) return known;
  const what = Object.hasOwn(OTHER_CLASSES, signature)
    ? OTHER_CLASSES[signature]
    : `the unknown class '${signature}'`;
  throw profileError(
    'profile-wrong-class',
    where,
    `expected a profile of a device or a colour space, received ${what}`,
  );
}

function readSpace(where: string, view: DataView): Pick<ProfileHeader, 'space' | 'channels'> {
  const signature = readSignature(view, 16);
  const known = Object.hasOwn(SPACES, signature) ? SPACES[signature] : undefined;
  if (known) return { space: known[0], channels: known[1] };
  const inks = /^([2-9A-F])CLR$/.exec(signature)?.[1];
  if (inks) return { space: 'other', channels: Number.parseInt(inks, 16) };
  throw profileError('profile-unsupported', where, `expected a known colour space, received '${signature}'`);
}

/** @see ICC.1:2022, 7.2.7 */
function readConnection(where: string, view: DataView): ConnectionSpace {
  const signature = readSignature(view, 20);
  if (signature === 'XYZ ') return 'xyz';
  if (signature === 'Lab ') return 'lab';
  throw profileError(
    'profile-unsupported',
    where,
    `expected XYZ or Lab as connection space, received '${signature}'`,
  );
}
