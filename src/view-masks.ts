import { findDarkAreas } from './checks/dark-areas.ts';
import type { PrintPicture } from './checks/define-check.ts';
import { takeGamutCensus } from './checks/gamut-census.ts';
import { gamutTableOf } from './conditions/colour-tables.ts';
import type { PrinterConversion } from './conditions/printer-conversion.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { Artwork } from './formats/artwork.ts';
import { encodeGrayPng } from './formats/write-small-picture.ts';
import { SRGB_PROFILE } from './icc/srgb-profile.ts';
import { shareOfMask } from './raster/share-of-mask.ts';
import type { PieceView, ViewedPicture } from './reports/html/piece-view.ts';

/** Longer side of a mask at most: stripes are drawn over it, whose own rim need not be fine (own choice). */
const MASK_SIDE_PX = 240;

/** By what colours are judged. */
interface ColoursToView {
  readonly condition: PrintingCondition;
  readonly conversion?: PrinterConversion | undefined;
}

/** Where the checks of colours counted a pixel as out of gamut, and as dark, as small gray pictures; null for nowhere. */
export async function viewMasks(
  { ownColours }: Pick<Artwork, 'ownColours'>,
  picture: PrintPicture,
  { condition, conversion }: ColoursToView,
): Promise<Pick<PieceView, 'outOfGamut' | 'dark'>> {
  const source = ownColours?.profile ?? SRGB_PROFILE;
  const { mask } = takeGamutCensus(picture.raster, gamutTableOf(condition.profile, source));
  const { dark, shadow } = findDarkAreas({
    picture,
    source,
    condition,
    conversion: conversion ?? null,
  });
  return {
    outOfGamut: await viewMask(mask, picture),
    dark: await viewMask(
      dark.map((isDark, at) => isDark | shadow[at]!),
      picture,
    ),
  };
}

async function viewMask(
  mask: Uint8Array,
  { raster: { widthPx, heightPx }, originMm, pixelMm }: PrintPicture,
): Promise<ViewedPicture | null> {
  const by = Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / MASK_SIDE_PX));
  const shares = shareOfMask(mask, widthPx, by);
  if (shares === null) return null;
  // The last cells may reach beyond the picture.
  const cellMm = pixelMm * by;
  const boxMm = { ...originMm, width: shares.widthPx * cellMm, height: shares.heightPx * cellMm };
  return { mediaType: 'image/png', bytes: await encodeGrayPng(shares), boxMm };
}
