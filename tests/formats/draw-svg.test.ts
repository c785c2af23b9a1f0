import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { draw, NS, opaqueBox, pixelAt, svg } from './svg-art.ts';

describe('size of a drawing as drawn', () => {
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
