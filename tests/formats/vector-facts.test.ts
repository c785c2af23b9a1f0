import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readArtwork } from '../../src/formats/read-artwork.ts';
import { factsOf, opaqueBox, svg } from './svg-art.ts';

describe('what a drawing depends on', () => {
  it('counts live text, not its parts and not outlines', async () => {
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
