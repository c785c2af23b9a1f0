import { converter } from 'culori';

/**
 * Hues in OKLCH degrees, each up to the next: halfway between the named colours of CSS Color 4 that carry the word
 * (red 29, orange 71, yellow 110, green 142, teal 195, blue 264, purple 328 …), moved where people disagree.
 */
const HUES = [
  [12, 'red'],
  [40, 'orange'],
  [85, 'yellow'],
  [118, 'green'],
  [172, 'teal'],
  [215, 'blue'],
  [285, 'violet'],
  [310, 'purple'],
  [340, 'pink'],
] as const;

/** Below this chroma a colour is called gray (own choice: a just visible tint is about 0.02). */
const GRAY_CHROMA = 0.03;

const toOklch = converter('oklch');

/**
 * A colour name that a person understands, such as `bright green`, `deep blue`, `pale pink` or `dark gray`, for an
 * sRGB colour, 0…255 each. Words, not a system of names: near neighbours may share one.
 * @see B. Ottosson, "A perceptual color space for image processing" (2020), for OKLCH; library culori
 */
export function nameColour([r, g, b]: readonly [number, number, number]): string {
  const { l, c, h = 0 } = toOklch({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
  if (c < GRAY_CHROMA) {
    if (l > 0.97) return 'white';
    if (l < 0.2) return 'black';
    return l > 0.75 ? 'light gray' : l < 0.45 ? 'dark gray' : 'gray';
  }
  const hue = hueWord(h);
  if (hue === 'orange' && l < 0.6) return l < 0.4 ? 'dark brown' : 'brown';
  if (hue === 'yellow' && l < 0.65) return 'olive';
  if (l > 0.8 && c < 0.11) return `pale ${hue}`;
  if (l < 0.45) return c > 0.12 ? `deep ${hue}` : `dark ${hue}`;
  if (c > 0.15) return `bright ${hue}`;
  return c < 0.08 ? `dull ${hue}` : hue;
}

function hueWord(hue: number): string {
  const found = HUES.findLast(([from]) => hue >= from);
  return found ? found[1] : 'pink';
}
