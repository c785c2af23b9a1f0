import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { type ReadOptions, readArtwork } from '../../src/formats/read-artwork.ts';
import type { Raster } from '../../src/raster/raster.ts';

const NS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
const svg = (attributes: string, inner: string, before = '') =>
  Buffer.from(`${before}<svg ${NS} ${attributes}>${inner}</svg>`);
const draw = async (bytes: Uint8Array, options?: ReadOptions) => (await readArtwork(bytes, options)).raster;
const factsOf = async (bytes: Uint8Array, options?: ReadOptions) =>
  (await readArtwork(bytes, options)).vector!;

/** Box of the pixels whose alpha is at least half, as [x, y, width, height]. */
function opaqueBox({ widthPx, heightPx, data }: Raster): number[] {
  let [left, top, right, bottom] = [widthPx, heightPx, 0, 0];
  for (let y = 0; y < heightPx; y++)
    for (let x = 0; x < widthPx; x++)
      if (data[(y * widthPx + x) * 4 + 3]! >= 128)
        [left, top, right, bottom] = [
          Math.min(left, x),
          Math.min(top, y),
          Math.max(right, x + 1),
          Math.max(bottom, y + 1),
        ];
  return [left, top, right - left, bottom - top];
}
const pixelAt = ({ widthPx, data }: Raster, x: number, y: number) => [
  ...data.subarray((y * widthPx + x) * 4, (y * widthPx + x) * 4 + 4),
];

describe('size of a drawing as drawn (T1)', () => {
  it.each([
    ['100mm x 50mm', 'width="100mm" height="50mm"', [2000, 1000]],
    ['100 x 50 px', 'width="100" height="50"', [2000, 1000]],
    ['only a view box', 'viewBox="0 0 300 900"', [667 - 1, 2000]], // 666.67 is cut down
    ['larger than 2000 px', 'width="2500" height="1000"', [2500, 1000]],
  ])('%s: at least 2000 px on the longer side', async (_, attributes, size) => {
    const { widthPx, heightPx } = await draw(svg(attributes, '<rect width="1" height="1"/>'));
    expect([widthPx, heightPx]).toEqual(size);
  });

  it.each([
    ['millimetres', 'width="100mm" height="50mm"', '<rect x="10mm" y="5mm" width="20mm" height="10mm"/>'],
    [
      'inches and a view box',
      'width="10in" height="5in" viewBox="0 0 100 50"',
      '<rect x="10" y="5" width="20" height="10"/>',
    ],
    [
      'a view box that does not begin at 0',
      'width="100%" viewBox="-50 -25 100 50"',
      '<rect x="-40" y="-20" width="20" height="10"/>',
    ],
    ['percentages', 'width="100pt" height="50pt"', '<rect x="10%" y="10%" width="20%" height="20%"/>'],
  ])('%s: things lie where they belong, at any size asked for', async (_, attributes, inner) => {
    for (const widthPx of [100, 1000, 2480]) {
      const raster = await draw(svg(attributes, inner), { drawAt: { widthPx, heightPx: widthPx / 2 } });
      expect([raster.widthPx, raster.heightPx]).toEqual([widthPx, widthPx / 2]);
      expect(opaqueBox(raster)).toEqual([0.1 * widthPx, 0.05 * widthPx, 0.2 * widthPx, 0.1 * widthPx]);
    }
  });

  it('draws, and does not enlarge: an edge stays one pixel wide', async () => {
    const raster = await draw(svg('width="10" height="10"', '<rect width="5" height="10"/>'), {
      drawAt: { widthPx: 4000, heightPx: 400 },
    });
    expect([1999, 2000].map((x) => pixelAt(raster, x, 200)[3])).toEqual([255, 0]);
  });

  it('a size that rounding put out of proportion leaves no seam at the edges', async () => {
    const raster = await draw(svg('viewBox="0 0 100 50"', '<rect width="100" height="50"/>'), {
      drawAt: { widthPx: 333, heightPx: 167 },
    });
    expect(raster.data.filter((_, index) => index % 4 === 3).every((alpha) => alpha === 255)).toBe(true);
  });

  it('keeps the space beside a view box of another shape', async () => {
    const raster = await draw(
      svg('width="200" height="100" viewBox="0 0 10 10"', '<rect width="10" height="10"/>'),
      { drawAt: { widthPx: 400, heightPx: 200 } },
    );
    expect(opaqueBox(raster)).toEqual([100, 0, 200, 200]);
  });

  it('a natural size of 50000 x 50000 is drawn as large as the limits allow', async () => {
    const { widthPx, heightPx } = await draw(
      svg('width="50000" height="50000"', '<rect width="9" height="9"/>'),
      { limits: { maxPixels: 1e6 } },
    );
    expect([widthPx, heightPx]).toEqual([1000, 1000]);
  });

  it.each([
    [{ widthPx: 2000, heightPx: 501 }, 'too-many-pixels'],
    [{ widthPx: 40_000, heightPx: 1 }, 'too-many-pixels'],
  ])('asked for %o within 1 million pixels: refused', async (drawAt, code) => {
    const bytes = svg('width="10" height="10"', '');
    await expect(readArtwork(bytes, { drawAt, limits: { maxPixels: 1e6 } })).rejects.toMatchObject({ code });
  });

  it('says when a drawing has no size', async () => {
    await expect(readArtwork(svg('', '<rect width="9" height="9"/>'))).rejects.toMatchObject({
      code: 'drawing-without-size',
    });
  });
});

describe('drawings as programs write them', () => {
  const RECT = '<rect width="4" height="6" fill="#f00"/>';
  const HALF = [0, 0, 1000, 1500];
  it.each([
    ['with a byte order mark', Buffer.concat([Buffer.from('\ufeff'), svg('width="8" height="6"', RECT)])],
    [
      'in UTF-16',
      Buffer.from(
        `\ufeff<?xml version="1.0" encoding="UTF-16"?>${svg('width="8" height="6"', RECT)}`,
        'utf16le',
      ),
    ],
    [
      'in Latin-1',
      Buffer.from(
        `<?xml version="1.0" encoding="ISO-8859-1"?>${svg('width="8" height="6"', `<desc>für den Garten</desc>${RECT}`)}`,
        'latin1',
      ),
    ],
    ['compressed', gzipSync(svg('width="8" height="6"', RECT))],
    [
      'with a long comment before the root',
      svg('width="8" height="6"', RECT, `<!-- ${'beds '.repeat(400)} -->`),
    ],
    [
      'with a prefix',
      Buffer.from(
        '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="8" height="6"><s:rect width="4" height="6" fill="#f00"/></s:svg>',
      ),
    ],
    [
      'with entities',
      svg(
        'width="8" height="6"',
        '<rect width="4" height="6" fill="&red;"/>',
        '<!DOCTYPE svg [ <!ENTITY red "#f00"> ]>',
      ),
    ],
    [
      'with single quotes, line breaks, and > in a value',
      Buffer.from(`<svg\n${NS}\n data-note='width="1" > height' width = '8'\n height='6'>${RECT}</svg>`),
    ],
    [
      'with a CDATA style',
      svg('width="8" height="6"', `<style><![CDATA[ rect > a { x: url(#p) } ]]></style>${RECT}`),
    ],
  ])('%s', async (_, bytes) => {
    const raster = await draw(bytes);
    expect(opaqueBox(raster)).toEqual(HALF);
    expect(pixelAt(raster, 10, 10)).toEqual([255, 0, 0, 255]);
  });
});

describe('what a drawing depends on', () => {
  it('counts live text (T26), not its parts and not outlines', async () => {
    const inner = '<text>Basil<tspan>3</tspan></text><g><text/></g><path d="M0 0h1"/>';
    expect((await factsOf(svg('width="8" height="6"', inner))).textElements).toBe(2);
    expect((await factsOf(svg('width="8" height="6"', '<path d="M0 0h1"/>'))).textElements).toBe(0);
  });

  it('lists everything outside, and nothing inside', async () => {
    const inside =
      '<a href="https://example.org"><rect fill="url(#g)" mask="url( \'#m\' )"/></a><use href="#g"/><image href="data:image/png;base64,AA"/>';
    expect((await factsOf(svg('width="8" height="6"', inside))).outsideReferences).toEqual([]);
    const outside = [
      '<image href="file:///etc/hostname"/>',
      '<image xlink:href="photo.png"/>',
      '<use href="other.svg#leaf"/>',
      '<rect fill="url(paint.svg#g)" style="filter:url(&quot;fx.svg#f&quot;)"/>',
      '<style>@import "a.css"; @import url(b.css); @font-face { src: url("c.woff2") }</style>',
      '<foreignObject/>',
      '<script>1</script>',
    ].join('');
    const before =
      '<?xml-stylesheet href="d.css"?><!DOCTYPE svg [ <!ENTITY e SYSTEM "file:///etc/passwd"> ]>';
    expect((await factsOf(svg('width="8" height="6"', outside, before))).outsideReferences).toEqual([
      'd.css',
      'file:///etc/passwd',
      'file:///etc/hostname',
      'photo.png',
      'other.svg#leaf',
      'paint.svg#g',
      'fx.svg#f',
      'b.css',
      'c.woff2',
      'a.css',
      '<foreignObject>',
      '<script>',
    ]);
  });
});

const PHOTO = `data:image/png;base64,${(
  await sharp({ create: { width: 40, height: 20, channels: 3, background: '#00f' } })
    .png()
    .toBuffer()
).toString('base64')}`;

describe('pictures inside a drawing', () => {
  it.each([
    ['as large as its frame', `<image href="${PHOTO}" width="40" height="20"/>`, [400, 200]],
    ['fitted into a square frame', `<image href="${PHOTO}" width="40" height="40"/>`, [400, 200]],
    [
      'filling a square frame',
      `<image href="${PHOTO}" width="40" height="40" preserveAspectRatio="xMidYMid slice"/>`,
      [800, 400],
    ],
    ['stretched', `<image href="${PHOTO}" width="40" height="40" preserveAspectRatio="none"/>`, [400, 400]],
    ['without a size', `<image href="${PHOTO}"/>`, [400, 200]],
    ['with a width only', `<image xlink:href="${PHOTO}" width="20"/>`, [200, 100]],
    ['of 50 %', `<image href="${PHOTO}" width="50%" height="50%"/>`, [500, 250]],
    [
      'moved, scaled, turned',
      `<g transform="translate(5) scale(2)"><image href="${PHOTO}" width="10" height="5" transform="rotate(30)"/></g>`,
      [200, 100],
    ],
    [
      'by a matrix',
      `<image href="${PHOTO}" width="10" height="5" transform="matrix(0 2 -3 0 0 0)" preserveAspectRatio="none"/>`,
      [200, 150],
    ],
    [
      'in a nested svg',
      `<svg width="50" height="50" viewBox="0 0 10 10"><image href="${PHOTO}" width="4" height="2"/></svg>`,
      [200, 100],
    ],
    [
      'through use',
      `<defs><image id="p" href="${PHOTO}" width="4" height="2"/></defs><use href="#p" transform="scale(3)"/>`,
      [120, 60],
    ],
  ])('%s', async (_, inner, [shownWidthPx, shownHeightPx]) => {
    const facts = await factsOf(svg('viewBox="0 0 100 100"', inner), {
      drawAt: { widthPx: 1000, heightPx: 1000 },
    });
    expect(facts.unplacedPictures).toBe(0);
    expect(facts.pictures).toHaveLength(1);
    const [picture] = facts.pictures;
    expect(picture).toMatchObject({ widthPx: 40, heightPx: 20 });
    expect(picture!.shownWidthPx).toBeCloseTo(shownWidthPx!, 6);
    expect(picture!.shownHeightPx).toBeCloseTo(shownHeightPx!, 6);
  });

  it('is shown as large as it is drawn: measured in the drawing itself', async () => {
    const bytes = svg(
      'viewBox="0 0 100 100"',
      `<g transform="scale(1.5)"><image href="${PHOTO}" x="4" y="4" width="40" height="40"/></g>`,
    );
    const { raster, vector } = await readArtwork(bytes, { drawAt: { widthPx: 1000, heightPx: 1000 } });
    const [, , width, height] = opaqueBox(raster);
    const [picture] = vector!.pictures;
    expect(picture!.shownWidthPx).toBeCloseTo(width!, 6);
    expect(picture!.shownHeightPx).toBeCloseTo(height!, 6);
  });

  it('counts those that something paints with, and those that are broken', async () => {
    const pattern = `<pattern id="q" width="1" height="1"><use href="#p"/></pattern><image id="p" href="${PHOTO}"/>`;
    const inner = `<defs>${pattern}</defs><rect width="50" height="50" fill="url(#q)"/><image href="data:image/png;base64,AAAA" width="9" height="9"/>`;
    expect(await factsOf(svg('viewBox="0 0 100 100"', inner))).toMatchObject({
      pictures: [],
      unplacedPictures: 2,
    });
  });

  it('a drawing inside a drawing is no picture', async () => {
    const inner =
      '<image href="data:image/svg+xml,%3Csvg xmlns=%22http://www.w3.org/2000/svg%22/%3E" width="9" height="9"/>';
    expect(await factsOf(svg('viewBox="0 0 100 100"', inner))).toMatchObject({
      pictures: [],
      unplacedPictures: 0,
    });
  });
});

describe('hostile drawings', () => {
  const codeOf = (bytes: Uint8Array, options?: ReadOptions) =>
    readArtwork(bytes, options).then(
      () => null,
      (error: { code?: string }) => error.code,
    );

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
