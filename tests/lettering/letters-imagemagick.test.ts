import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { limitsWith } from '../../src/formats/limits.ts';
import { letter } from '../../src/lettering/letter.ts';
import { drawMarks } from '../formats/draw-marks-alone.ts';
import { requireWitness } from '../witness.ts';

const require = createRequire(import.meta.url);
/** Large, since FreeType rounds every point to 1/64 pixel. */
const [SIDE, EM] = [1200, 800];

/** One letter set by ImageMagick (FreeType) from the font file itself, its origin at 240, 840: ink 0…255. */
function theirs(character: string, part: string): Buffer {
  const font = require.resolve(`@fontsource/roboto/files/roboto-${part}-400-normal.woff`);
  const options = [
    ...['-size', `${SIDE}x${SIDE}`, 'xc:white', '-density', '72', '-font', font, '-pointsize', String(EM)],
    ...['-define', 'type:hinting=off', '-annotate', '+240+840', character],
    ...['-depth', '8', '-colorspace', 'gray', '-negate', 'gray:-'],
  ];
  return execFileSync('convert', options, { maxBuffer: 2 * SIDE * SIDE });
}

async function ours(character: string): Promise<Uint8Array | Uint16Array> {
  // 25.4 ppi: a mm is a pixel. Capitals of this font are 1456/2048 of its em.
  const { path } = letter(character, { capHeightMm: (EM * 1456) / 2048, at: { x: 240, y: 840 } });
  const ink = [{ kind: 'path', path, colour: { r: 0, g: 0, b: 0 } }] as const;
  const ppi = { x: 25.4, y: 25.4 };
  const { data } = await drawMarks(ink, { widthPx: SIDE, heightPx: SIDE }, ppi, limitsWith());
  return data.filter((_, i) => i % 4 === 3);
}

const CHARACTERS = [
  ['latin', 'HgQ8@%&½Å'],
  ['latin-ext', 'žŐŋ'],
  ['greek', 'Ωώ'],
  ['cyrillic', 'Жй'],
] as const;

describe('letters, against FreeType by way of ImageMagick', { timeout: 60_000 }, () => {
  it('have the same ink', async (context) => {
    requireWitness(context, 'convert');
    for (const [part, characters] of CHARACTERS)
      for (const character of characters) {
        const [one, other] = [await ours(character), theirs(character, part)];
        let [rimPx, differing] = [0, 0];
        for (let i = 0; i < other.length; i++) {
          if (other[i]! > 0 && other[i]! < 255) rimPx++;
          differing += Math.abs(one[i]! - other[i]!) / 255;
        }
        expect(rimPx).toBeGreaterThan(500);
        // How far the rims lie apart on average: less than one unit of the font, to which its points are whole.
        expect(differing / rimPx, character).toBeLessThan(EM / 2048);
      }
  });
});
