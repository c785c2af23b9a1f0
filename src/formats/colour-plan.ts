import { createHash } from 'node:crypto';
import { BlankcheckError } from '../blankcheck-error.ts';
import { isSrgb } from '../icc/is-srgb.ts';
import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import { makeSrgbTransform } from '../icc/srgb-transform.ts';
import { WIDE_PROFILE } from '../icc/wide-profile.ts';
import type { ColourModel } from '../raster/raster.ts';
import type { ArtworkProfile, OwnColours } from './artwork.ts';
import type { StatedColour } from './container-facts.ts';
import { readKnownProfile } from './known-profiles.ts';
import { toSrgbTransform } from './to-srgb-transform.ts';
import { toWideTransform } from './to-wide-transform.ts';

/** How the device samples of a file become those of the working picture. */
export interface ColourPlan {
  readonly profile: ArtworkProfile;
  /**
   * `keep`: they are sRGB, are taken for it, or stay in `ownColours`; `reference`: as the printing condition that
   * stands in for CMYK without a profile says. A transform leads to `ownColours`, or to sRGB where there are none.
   */
  readonly way: 'keep' | 'reference' | PixelTransform;
  /** What sRGB might clip stays unclipped until the picture has been judged and scaled. */
  readonly ownColours: OwnColours | null;
}

const SPACE_NAMES: Readonly<Record<ColourModel, string>> = { gray: 'gray', rgb: 'RGB', cmyk: 'CMYK' };

/** What to do about the colours of a picture of this model. Never throws: a bad profile is a fact of the artwork. */
export function planColour(stated: StatedColour, model: ColourModel): ColourPlan {
  const read = stated.kind === 'icc' ? readFor(stated.bytes, model) : stated;
  if (read.kind === 'usable') return planByProfile(read, model);
  if (model === 'cmyk')
    return {
      profile: { kind: 'cmyk', name: null, sha256: null },
      way: 'reference',
      ownColours: inWide('CMYK'),
    };
  const profile: ArtworkProfile =
    read.kind === 'none'
      ? { kind: 'none', model }
      : read.kind === 'srgb'
        ? { kind: 'srgb', name: 'sRGB' }
        : read;
  return { profile, way: 'keep', ownColours: null };
}

interface UsableProfile {
  readonly kind: 'usable';
  readonly profile: IccProfile;
  readonly sha256: string;
  readonly transform: PixelTransform;
}

function planByProfile({ profile, sha256, transform }: UsableProfile, model: ColourModel): ColourPlan {
  const name = profile.description || 'a profile without a name';
  const toWide = () => ({ way: toWideTransform(profile), ownColours: inWide(name) });
  if (model === 'cmyk') return { profile: { kind: 'cmyk', name, sha256 }, ...toWide() };
  // Conversion would change nothing that shows, so the samples stay as they are.
  if (isSrgb(profile) || leavesGrayAlone(transform))
    return { profile: { kind: 'srgb', name }, way: 'keep', ownColours: null };
  const kind =
    profile.class === 'output'
      ? 'printer'
      : profile.toConnection?.relative.kind === 'table'
        ? 'table'
        : model;
  const own = { name, profile, toSrgb: transform };
  if (kind === 'rgb') return { profile: { kind, name }, way: 'keep', ownColours: own };
  if (kind === 'printer') {
    const facts: ArtworkProfile = { kind, name, sha256 };
    // A profile that leads both ways serves as a working space, and its printer may get the samples as they are.
    if (model === 'rgb' && profile.fromConnection)
      return { profile: facts, way: 'keep', ownColours: { ...own, sha256 } };
    return model === 'rgb'
      ? { profile: facts, ...toWide() }
      : { profile: facts, way: transform, ownColours: null };
  }
  if (model === 'rgb') return { profile: { kind, name }, ...toWide() };
  return { profile: { kind, name }, way: transform, ownColours: null };
}

/** Tables, and inks, come into a working space that clips none of their colours. */
function inWide(name: string): OwnColours {
  return { name, profile: WIDE_PROFILE, toSrgb: makeSrgbTransform(WIDE_PROFILE) };
}

/** The profile and its transform, when it is sound and meant for pictures of this model. */
function readFor(
  bytes: Uint8Array,
  model: ColourModel,
): UsableProfile | Extract<StatedColour, { kind: 'unusable' }> {
  try {
    const profile = readKnownProfile(bytes);
    // Gray pictures often carry the profile of the RGB space they came from: sRGB says of gray what it says of RGB.
    if (profile.space === model || (model === 'gray' && isSrgb(profile)))
      return { kind: 'usable', profile, sha256: hash(bytes), transform: toSrgbTransform(profile) };
    return {
      kind: 'unusable',
      reason: `it describes ${profile.space.toUpperCase()} colours, the picture is ${SPACE_NAMES[model]}`,
    };
  } catch (error) {
    if (error instanceof BlankcheckError && error.kind === 'profile')
      return { kind: 'unusable', reason: error.message };
    throw error;
  }
}

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

/** True when no 8-bit gray moves by more than one step, as `isSrgb` asks of RGB. */
function leavesGrayAlone(transform: PixelTransform): boolean {
  if (transform.inputChannels !== 1 || transform.outputChannels !== 1) return false;
  const source = Uint8Array.from({ length: 256 }, (_, code) => code);
  const target = new Uint8Array(256);
  transform.convert8(source, target, 256);
  return source.every((code, index) => Math.abs(code - target[index]!) <= 1);
}
