import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { cmykArt, codesOf, INKS, PRESS, RGB_PRINTER, RGB_TABLE, rgbArt } from './jobs.ts';

/** Art in spaces of tables and the printer it is for. Inks darker than their profile's black are clipped on the way: see near-black. */
export const CASES = [
  ['CMYK art to another printer’s inks', cmykArt(PRESS), PRESS, INKS, 4, COATED_REFERENCE],
  ['CMYK art without a profile to RGB', cmykArt(), COATED_REFERENCE, INKS, 4, RGB_PRINTER],
  ['RGB art of a table to inks', rgbArt(RGB_TABLE, codesOf(3)), RGB_TABLE, codesOf(3), 3, COATED_REFERENCE],
] as const;
