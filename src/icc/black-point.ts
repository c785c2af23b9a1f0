import { labToXyzD50 } from '../colour/lab.ts';
import type { Triple } from '../colour/triple.ts';
import { makeFromLabStages, makeToLabStages, toLabD50 } from './lab-d50.ts';
import type { IccProfile, TableIntent } from './profile.ts';
import { findShadowCorner } from './shadow-corner.ts';
import { runStages } from './stage.ts';

/** Black of the perceptual reference medium of version 4. @see ICC.1:2022, 6.3 */
const REFERENCE_BLACK_XYZ: Triple = [0.00336, 0.0034731, 0.00287];

const NO_BLACK: Triple = [0, 0, 0];

/** A lighter "black" is a fault of the profile, and as much as will be compensated. @see ISO 18619:2015 */
const LIGHTEST_BLACK = 50;

const RAMP_STEPS = 256;

/**
 * XYZ (D50, relative to the media white) of the black of pictures made for the profile: its darkest colorant, or for
 * a CMYK printer, whose full inks nobody prints, the darkest colour that its perceptual table makes. Always neutral.
 * @see ISO 18619:2015
 */
export function findSourceBlack(profile: IccProfile, intent: TableIntent): Triple {
  const darkest = darkestDevice(profile);
  if (!profile.toConnection || !darkest) return NO_BLACK;
  if (hasReferenceBlack(profile, intent)) return REFERENCE_BLACK_XYZ;
  if (
    intent === 'relative' &&
    profile.class === 'output' &&
    profile.space === 'cmyk' &&
    profile.fromConnection
  )
    return neutralBlack(printLightness(profile, 'perceptual', [0])[0]!);
  const darkIntent = profile.toConnection[intent].kind === 'table' ? intent : 'relative';
  return neutralBlack(toLabD50(profile, darkest, { intent: darkIntent })[0]);
}

/**
 * XYZ of the black that pictures are brought to when converted to the profile. For tables it is found by sending a
 * neutral ramp through them and back; everything else is as for a source.
 * @see ISO 18619:2015
 */
export function findTargetBlack(profile: IccProfile, intent: TableIntent): Triple {
  const model = profile.fromConnection?.[intent];
  const isPrinted = profile.space === 'gray' || profile.space === 'rgb' || profile.space === 'cmyk';
  if (model?.kind !== 'table' || !isPrinted || !profile.toConnection || hasReferenceBlack(profile, intent))
    return findSourceBlack(profile, intent);

  const asked = Array.from({ length: RAMP_STEPS }, (_, i) => (i * 100) / (RAMP_STEPS - 1));
  const corner = findShadowCorner(asked, printLightness(profile, intent, asked), intent);
  if (corner === 'straight') return findSourceBlack(profile, intent);
  return corner === null ? NO_BLACK : neutralBlack(corner);
}

/** Perceptual and saturation tables of version 4 all end at the same black. @see ICC.1:2022, 6.3 */
function hasReferenceBlack(profile: IccProfile, intent: TableIntent): boolean {
  const isTable = (profile.toConnection ?? profile.fromConnection)?.[intent].kind === 'table';
  return profile.majorVersion === 4 && intent !== 'relative' && isTable;
}

/** Device values of the darkest colorant; null where the space has none of its own. */
function darkestDevice({ space, channels }: IccProfile): number[] | null {
  if (space === 'gray' || space === 'rgb') return Array<number>(channels).fill(0);
  return space === 'cmyk' ? [1, 1, 1, 1] : null;
}

/** L* of what is printed for neutrals of these L*, relative to the paper. */
function printLightness(profile: IccProfile, intent: TableIntent, lightnesses: readonly number[]): number[] {
  const stages = [...makeFromLabStages(profile, intent), ...makeToLabStages(profile, 'relative')];
  return lightnesses.map((lightness) => runStages(stages, [lightness, 0, 0], 1)[0]!);
}

function neutralBlack(lightness: number): Triple {
  return labToXyzD50([Math.min(LIGHTEST_BLACK, Math.max(0, lightness)), 0, 0]);
}
