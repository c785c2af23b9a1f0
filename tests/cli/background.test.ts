import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { parseBackground } from '../../cli/background.ts';

describe('parseBackground', () => {
  /** Values of the named colours and the syntax: CSS Color Module Level 4, 5.2, 6.1, 7. */
  it.each([
    ['white', 255, 255, 255],
    ['Cornsilk', 255, 248, 220],
    ['rebeccapurple', 102, 51, 153],
    ['#fff8e7', 255, 248, 231],
    ['#ABC', 170, 187, 204],
    ['rgb(1, 2, 3)', 1, 2, 3],
    ['rgb(1 2 3)', 1, 2, 3],
    ['hsl(120, 100%, 50%)', 0, 255, 0],
    ['hsl(39, 100%, 50%)', 255, 166, 0],
    ['  black ', 0, 0, 0],
    ['rgba(9, 9, 9, 1)', 9, 9, 9],
  ])('%s', async (text, r, g, b) => {
    expect(await parseBackground(text)).toEqual({ r, g, b, alpha: 1 });
  });

  it.each(['transparent', '#ff000000', 'rgba(9, 9, 9, 0)'])('%s is clear', async (text) =>
    expect(await parseBackground(text)).toEqual({ r: 0, g: 0, b: 0, alpha: 0 }),
  );

  // culori as second implementation of CSS Color 4; out of sRGB, chroma is what gives way.
  it.each(['lab(52% 0 0)', 'oklch(0.62 0.08 240)', 'color(srgb 0.2 0.4 0.6)'])(
    '%s, inside sRGB, as it is',
    async (text) => {
      const { r = 0, g = 0, b = 0 } = converter('rgb')(text) ?? {};
      expect(await parseBackground(text)).toEqual({
        r: Math.round(r * 255),
        g: Math.round(g * 255),
        b: Math.round(b * 255),
        alpha: 1,
      });
    },
  );

  it('a colour beyond sRGB keeps its hue', async () => {
    const { r, g, b } = await parseBackground('color(display-p3 0 1 0)');
    const hue = converter('oklch')({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 }).h!;
    expect(Math.abs(hue - converter('oklch')('color(display-p3 0 1 0)')!.h!)).toBeLessThan(1);
  });

  it.each([
    '',
    'wite',
    '#ff',
    '#gggggg',
    'rgb(1,2)',
    'rgb(.%, .%, .%)',
    '12',
    'rgba(1,2,3,0.5)',
    '#12345678',
    '#0f08',
    'none',
    'constructor',
    '__proto__',
  ])('%j is refused', async (text) => {
    await expect(parseBackground(text)).rejects.toMatchObject({ code: 'bad-colour' });
  });
});
