import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findGlyph, hasGlyph } from '../../src/lettering/find-glyph.ts';
import { letter } from '../../src/lettering/letter.ts';
import { charactersOf, measureText } from '../../src/lettering/measure-text.ts';
import { shortenText } from '../../src/lettering/shorten-text.ts';

const from = (first: number, last: number) =>
  Array.from({ length: last - first + 1 }, (_, i) => String.fromCodePoint(first + i));
const at = { x: 20, y: 30 };

describe('letters', () => {
  it('has every printable character of ASCII and Latin-1 and every letter of Latin Extended-A', () => {
    const printable = [...from(0x20, 0x7e), ...from(0xa0, 0xff)].filter((one) => one !== '\u00ad');
    expect(printable.flatMap(charactersOf).filter((one) => !hasGlyph(one))).toEqual([]);
    // ŉ is deprecated by Unicode; it is there all the same.
    expect(from(0x100, 0x17f).filter((one) => !hasGlyph(one))).toEqual([]);
  });

  it('has Greek, Cyrillic and Vietnamese letters and the signs of a label', () => {
    expect([...'Ωέя́ЩҐếự×°±–—…“”½≤≥'].filter((one) => !hasGlyph(one))).toEqual([]);
  });

  it('ships the licence that the font package carries', () => {
    const require = createRequire(import.meta.url);
    const ours = readFileSync(new URL('../../seeds/lettering/OFL.txt', import.meta.url), 'utf8');
    expect(ours).toBe(readFileSync(require.resolve('@fontsource/roboto/LICENSE'), 'utf8'));
    expect(ours).toContain('SIL OPEN FONT LICENSE Version 1.1');
    expect(ours).not.toMatch(/with Reserved Font Name/i);
  });
});

describe('a line of text', () => {
  it('is as high as asked for, standing on its baseline', () => {
    const { boxMm } = letter('H', { capHeightMm: 2, at });
    expect(boxMm!.y).toBeCloseTo(28, 9);
    expect(boxMm!.height).toBeCloseTo(2, 9);
  });

  it('grows in proportion, and its parts add up', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme-ascii' }), (one, other) => {
        expect(measureText(one, 4)).toBeCloseTo(2 * measureText(one, 2), 9);
        expect(measureText(`${one} ${other}`, 2)).toBeCloseTo(
          measureText(one, 2) + measureText(' ', 2) + measureText(other, 2),
          9,
        );
      }),
    );
  });

  it('begins, has its middle or ends at its point', () => {
    const [start, middle, end] = (['start', 'middle', 'end'] as const).map((anchor) =>
      letter('Tulip', { capHeightMm: 3, at, anchor }),
    );
    expect(middle!.boxMm!.x).toBeCloseTo(start!.boxMm!.x - start!.widthMm / 2, 9);
    expect(end!.boxMm!.x).toBeCloseTo(start!.boxMm!.x - start!.widthMm, 9);
    expect(end!.boxMm!.x + end!.boxMm!.width).toBeLessThanOrEqual(at.x);
  });

  it('reads downwards when turned by 90, upwards by 270', () => {
    const upright = letter('Fig', { capHeightMm: 2, at }).boxMm!;
    const down = letter('Fig', { capHeightMm: 2, at, turn: 90 }).boxMm!;
    const up = letter('Fig', { capHeightMm: 2, at, turn: 270 }).boxMm!;
    expect(down.y - at.y).toBeCloseTo(upright.x - at.x, 9);
    expect(at.y - (up.y + up.height)).toBeCloseTo(upright.x - at.x, 9);
    expect([down.width, up.width]).toEqual([
      expect.closeTo(upright.height, 9),
      expect.closeTo(upright.height, 9),
    ]);
    // Letters rise to the right of a line that reads downwards, to the left of one that reads upwards.
    expect(down.x + down.width).toBeGreaterThan(at.x + 1.9);
    expect(up.x).toBeLessThan(at.x - 1.9);
  });

  it('mirrored it takes the same room, and is the mirror image about the middle of its width', () => {
    for (const anchor of ['start', 'middle', 'end'] as const) {
      const plain = letter('Left', { capHeightMm: 2, at, anchor });
      const mirrored = letter('Left', { capHeightMm: 2, at, anchor, mirrored: true });
      const shares = { start: 0, middle: 0.5, end: 1 };
      const axis = at.x + plain.widthMm * (0.5 - shares[anchor]);
      expect(mirrored.widthMm).toBe(plain.widthMm);
      expect(mirrored.boxMm!.x).toBeCloseTo(2 * axis - plain.boxMm!.x - plain.boxMm!.width, 9);
      expect(mirrored.boxMm!.y).toBe(plain.boxMm!.y);
    }
  });

  it('draws what it is given, whatever that is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const { path, boxMm, widthMm } = letter(text, { capHeightMm: 2, at });
        expect(path.flat().every((part) => typeof part === 'string' || Number.isFinite(part))).toBe(true);
        expect(boxMm === null).toBe(path.length === 0);
        expect(widthMm).toBeGreaterThanOrEqual(0);
      }),
    );
    expect(letter('', { capHeightMm: 2, at })).toEqual({ path: [], text: '', widthMm: 0, boxMm: null });
  });

  it('shows a box for a character it has not, composes letters, and leaves out what shows nothing', () => {
    const box = findGlyph('\u{1F331}');
    expect(box.outline.length).toBeGreaterThan(4);
    expect(letter('\u{1F331}\uFE0F', { capHeightMm: 2, at }).path).toEqual(
      letter('\uD800', { capHeightMm: 2, at }).path,
    );
    expect(letter('z\u030Cluty\u0301', { capHeightMm: 2, at }).path).toEqual(
      letter('žlutý', { capHeightMm: 2, at }).path,
    );
    expect(charactersOf('a\u200Db\u00ADc\td\n')).toEqual([...'abc d ']);
  });
});

describe('text that is too long', () => {
  it('keeps its beginning and its end', () => {
    const text = 'spring plant sale, tomato seedlings, row 12.png';
    const short = shortenText(text, 2, 40);
    expect(short).toMatch(/^spring pl.*….*12\.png$/);
    expect(measureText(short, 2)).toBeLessThanOrEqual(40);
  });

  it('never is wider than it may be, and no character more would fit', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60 }),
        fc.double({ min: 0, max: 80, noNaN: true }),
        (text, maxWidthMm) => {
          const short = shortenText(text, 2, maxWidthMm);
          expect(measureText(short, 2)).toBeLessThanOrEqual(maxWidthMm);
          if (measureText(text, 2) <= maxWidthMm) expect(short).toBe(text);
          else if (measureText('…', 2) <= maxWidthMm) expect(short).toContain('…');
          else expect(short).toBe('');
        },
      ),
    );
  });

  it('is shortened by `letter` too, which says what it drew', () => {
    const { text, widthMm, path } = letter('Community garden', { capHeightMm: 2, at, maxWidthMm: 15 });
    expect(text).toBe(shortenText('Community garden', 2, 15));
    expect(widthMm).toBeLessThanOrEqual(15);
    expect(path).toEqual(letter(text, { capHeightMm: 2, at }).path);
  });
});
