import { XYZ_D50 } from '../colour/lab.ts';
import type { IccProfile } from './profile.ts';
import { readDescription } from './read-description.ts';
import { readDirections } from './read-directions.ts';
import { readHeader } from './read-header.ts';
import { readTagTable } from './read-tag-table.ts';
import { readAdaptation, readWhite } from './read-xyz.ts';

/**
 * Reads an ICC profile of version 2 or 4 and of class input, display, output or colour space. Everything that can
 * take part in a conversion is checked here, so that conversions cannot fail later; other tags are only checked for
 * their place. Bytes behind the stated length are ignored.
 * @throws profile-malformed, profile-truncated, profile-unsupported, profile-wrong-class, profile-missing-tag
 * @see ICC.1:2022, clause 7 and 8
 */
export function readProfile(bytes: Uint8Array): IccProfile {
  const whole = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const { byteLength, ...header } = readHeader({ where: 'header', view: whole });
  const tags = readTagTable({
    where: 'tag table',
    view: new DataView(bytes.buffer, bytes.byteOffset, byteLength),
  });
  const white = tags.get('wtpt');
  const adaptation = tags.get('chad');
  return {
    ...header,
    description: readDescription(tags.get('desc')),
    mediaWhiteXyz: white ? readWhite(white) : XYZ_D50,
    adaptation: adaptation ? readAdaptation(adaptation) : null,
    ...readDirections(header, tags),
  };
}
