import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { codeOf, draw, NS, svg } from './svg-art.ts';

describe('hostile drawings', () => {
  it('entities that multiply a billion times', async () => {
    const levels = Array.from(
      { length: 10 },
      (_, level) => `<!ENTITY l${level + 1} "${`&l${level};`.repeat(10)}">`,
    ).join('');
    const before = `<!DOCTYPE svg [ <!ENTITY l0 "lol"> ${levels} ]>`;
    expect(await codeOf(svg('width="8" height="6"', '<text>&l10;</text>', before))).toBe('damaged');
  });

  it('an entity that names a file is not read', async () => {
    const before = '<!DOCTYPE svg [ <!ENTITY e SYSTEM "file:///etc/passwd"> ]>';
    const bytes = svg('width="8" height="6"', '<text y="5">&e;</text>', before);
    const blank = svg('width="8" height="6"', '<text y="5"></text>');
    const code = await codeOf(bytes);
    if (code === null) expect((await draw(bytes)).data).toEqual((await draw(blank)).data);
    else expect(code).toBe('damaged');
  });

  it('a picture from the disk is not drawn', async () => {
    const path = join(mkdtempSync(join(tmpdir(), 'blankcheck-')), 'red.png');
    writeFileSync(
      path,
      await sharp({ create: { width: 8, height: 8, channels: 3, background: '#f00' } })
        .png()
        .toBuffer(),
    );
    const raster = await draw(
      svg(
        'width="8" height="8"',
        `<image href="file://${path}" width="8" height="8"/><image href="${path}" width="8" height="8"/>`,
      ),
    );
    expect(raster.data.every((sample) => sample === 0)).toBe(true);
  });

  it('use within use: stopped by the clock, whatever the library does', async () => {
    const levels = Array.from(
      { length: 24 },
      (_, level) => `<g id="u${level + 1}"><use href="#u${level}"/><use href="#u${level}"/></g>`,
    ).join('');
    const bytes = svg(
      'width="8" height="8"',
      `<defs><rect id="u0" width="1" height="1"/>${levels}</defs><use href="#u24"/>`,
    );
    const begun = performance.now();
    expect(await codeOf(bytes, { limits: { maxSeconds: 0.5 } })).toBe('too-slow');
    expect(performance.now() - begun).toBeLessThan(5_000); // bounded, not measured: the limit is half a second
  });

  it.each([
    ['elements a million deep', svg('width="8" height="6"', '<g>'.repeat(1_000_000))],
    ['end tags that close nothing', svg('width="8" height="6"', '</g>'.repeat(1_000_000))],
    ['a root that is never closed', Buffer.from(`<svg ${NS} width="8" height="6"><g/>`)],
    ['two roots', Buffer.from(`<svg ${NS} width="8" height="6"/><svg ${NS} width="8" height="6"/>`)],
  ])('%s', async (_, bytes) => {
    expect(await codeOf(bytes)).toBe('damaged');
  });

  // Each would take minutes if a pattern backtracked or lists multiplied: the test's own time limit is the judge.
  it.each([
    [
      'letters that are no transform',
      svg('width="8" height="6"', `<g transform="${'a'.repeat(200_000)}"/>`),
      null,
    ],
    [
      'numbers that are no length',
      svg(`width="${'1'.repeat(200_000)}!" height="6"`, ''),
      'drawing-without-size',
    ],
    ['a name without a value', svg(`width="8" height="6" ${'a'.repeat(200_000)}`, ''), 'damaged'],
    ['entities that nobody defined', svg('width="8" height="6"', '&a;'.repeat(1_000_000)), 'damaged'],
    ['comments before a web page', Buffer.from(`${'<!-- -->'.repeat(100)}<`), 'unsupported-format'],
    [
      'pictures used over and over',
      svg(
        'width="8" height="6"',
        `${'<use href="#p"/>'.repeat(20_000)}${'<image id="p" href="data:image/png,x"/>'.repeat(600)}`,
      ),
      null,
    ],
  ])('%s: read in time', async (_, bytes, code) => {
    expect(await codeOf(bytes, { drawAt: { widthPx: 8, heightPx: 6 } })).toBe(code);
  });

  it('a compressed bomb is not unpacked beyond the limit', async () => {
    const bomb = gzipSync(svg('width="8" height="6"', ' '.repeat(5_000_000)));
    expect(bomb.length).toBeLessThan(10_000);
    expect(await codeOf(bomb, { limits: { maxSvgBytes: 1_000_000 } })).toBe('too-many-bytes');
    expect(await codeOf(bomb)).toBe(null);
  });
});
