import { BlankcheckError } from '../blankcheck-error.ts';
import { isSrgb } from '../icc/is-srgb.ts';
import type { PixelTransform } from '../icc/pixel-transform.ts';
import type { IccProfile } from '../icc/profile.ts';
import { readProfile } from '../icc/read-profile.ts';
import { makeSrgbTransform } from '../icc/srgb-transform.ts';
import type { ColourModel } from '../raster/raster.ts';
import type { ArtworkProfile } from './artwork.ts';
import type { StatedColour } from './container-facts.ts';

/** How the device samples of a file become sRGB. */
export interface ColourPlan {
  readonly profile: ArtworkProfile;
  /** `keep`: they are sRGB, or are taken for it; `library`: by the imaging library, while it decodes. */
  readonly way: 'keep' | 'library' | PixelTransform;
}

const SPACE_NAMES: Readonly<Record<ColourModel, string>> = { gray: 'gray', rgb: 'RGB', cmyk: 'CMYK' };

/** What to do about the colours of a picture of this model. Never throws: a bad profile is a fact of the artwork. */
export function planColour(stated: StatedColour, model: ColourModel): ColourPlan {
  const read = stated.kind === 'icc' ? readFor(stated.bytes, model) : null;
  if (model === 'cmyk')
    return { profile: { kind: 'cmyk', name: read?.profile?.description ?? null }, way: 'library' };
  if (read)
    return read.profile
      ? planByProfile(read.profile, model)
      : keep({ kind: 'unusable', reason: read.reason });
  if (stated.kind === 'unusable') return keep(stated);
  return keep(stated.kind === 'srgb' ? { kind: 'srgb', name: 'sRGB' } : { kind: 'none', model });
}

const keep = (profile: ArtworkProfile): ColourPlan => ({ profile, way: 'keep' });

type ProfileRead =
  | { readonly profile: IccProfile; readonly reason?: never }
  | { readonly profile: null; readonly reason: string };

/** The profile, when it is sound and meant for pictures of this model. */
function readFor(bytes: Uint8Array, model: ColourModel): ProfileRead {
  try {
    const profile = readProfile(bytes);
    // Gray pictures often carry the profile of the RGB space they came from: sRGB says of gray what it says of RGB.
    if (profile.space === model || (model === 'gray' && profile.space === 'rgb' && isSrgb(profile)))
      return { profile };
    return {
      profile: null,
      reason: `it describes ${profile.space.toUpperCase()} colours, the picture is ${SPACE_NAMES[model]}`,
    };
  } catch (error) {
    if (error instanceof BlankcheckError && error.kind === 'profile')
      return { profile: null, reason: error.message };
    throw error;
  }
}

function planByProfile(profile: IccProfile, model: 'gray' | 'rgb'): ColourPlan {
  const name = profile.description || 'a profile without a name';
  try {
    if (isSrgb(profile)) return keep({ kind: 'srgb', name });
    const transform = makeSrgbTransform(profile);
    if (model === 'gray' && leavesGrayAlone(transform)) return keep({ kind: 'srgb', name });
    return { profile: { kind: model, name }, way: transform };
  } catch (error) {
    if (!(error instanceof BlankcheckError && error.kind === 'profile')) throw error;
    if (error.code === 'profile-unsupported') return { profile: { kind: 'table', name }, way: 'library' };
    return keep({ kind: 'unusable', reason: error.message });
  }
}

/** True when no 8-bit gray moves by more than one step, as `isSrgb` asks of RGB. */
function leavesGrayAlone(transform: PixelTransform): boolean {
  const source = Uint8Array.from({ length: 256 }, (_, code) => code);
  const target = new Uint8Array(256);
  transform.convert8(source, target, 256);
  return source.every((code, index) => Math.abs(code - target[index]!) <= 1);
}
