/**
 * Weights of luma, a stand-in for lightness that costs one pass: of the coded samples of red, green and blue (ITU-R
 * BT.709-6, 3.2). Of linear sRGB, which has the primaries and the white of BT.709, they give Y (IEC 61966-2-1).
 */
export const LUMA_RED = 0.2126;
export const LUMA_GREEN = 0.7152;
export const LUMA_BLUE = 0.0722;
