import { BlankcheckError } from '../blankcheck-error.ts';
import type { Raster } from '../raster/raster.ts';
import { type DrawAt, drawnLength, drawSizedSvg } from './draw-sized-svg.ts';
import type { Limits } from './limits.ts';
import type { SvgScan } from './svg-scan.ts';
import type { SvgSize } from './svg-size.ts';

/** Longer side of a drawing that nobody has placed yet: enough to measure where its visible part is. */
const FIRST_LOOK_PX = 2000;

/** Natural size, or larger so that the longer side has 2000 pixels; smaller only where the limits say so. */
export function chooseDrawSize({ widthPx, heightPx }: SvgSize, limits: Limits): DrawAt {
  const longer = Math.max(widthPx, heightPx);
  const scale = Math.min(
    Math.max(1, FIRST_LOOK_PX / longer),
    limits.maxSvgSidePx / longer,
    Math.sqrt(limits.maxPixels / (widthPx * heightPx)),
  );
  const pixels = (length: number) => Math.max(1, Math.floor(length * scale + 1e-6));
  return { widthPx: pixels(widthPx), heightPx: pixels(heightPx) };
}

/**
 * Draws the whole canvas at exactly this size, in 8-bit sRGB with alpha; nothing outside the file is loaded.
 * @throws `too-many-pixels` when the size is beyond the limits; `damaged`, `too-slow`
 */
export async function drawSvg(
  text: string,
  scan: SvgScan,
  { widthPx, heightPx }: DrawAt,
  limits: Limits,
): Promise<Raster> {
  if (widthPx * heightPx > limits.maxPixels || Math.max(widthPx, heightPx) > limits.maxSvgSidePx)
    throw new BlankcheckError(
      'too-many-pixels',
      `The drawing would be drawn at ${widthPx} x ${heightPx} pixels, the limits are ${limits.maxPixels / 1e6} million and ${limits.maxSvgSidePx} a side. Print it smaller, or at fewer pixels per inch.`,
    );
  return drawSizedSvg(sizedSvg(text, scan, { widthPx, heightPx }), { widthPx, heightPx }, limits);
}

/**
 * The drawing with the wanted size as width and height of its root. So the library draws it at once at that size,
 * with exact edges, and neither a natural size of 50000 x 50000 nor the way it scales by density matters.
 * It comes as bytes, never as a path: from a path, files beside it would be loaded.
 */
function sizedSvg(text: string, { size, rootTag }: SvgScan, { widthPx, heightPx }: DrawAt): Buffer {
  const viewBox = size.viewBox ?? { x: 0, y: 0, width: size.widthPx, height: size.heightPx };
  const fills = Math.abs((viewBox.width * size.heightPx) / (viewBox.height * size.widthPx) - 1) < SAME_SHAPE;
  const attributes = [
    `width="${drawnLength(widthPx)}"`,
    `height="${drawnLength(heightPx)}"`,
    `viewBox="${viewBox.x} ${viewBox.y} ${viewBox.width} ${viewBox.height}"`,
    ...(fills ? ['preserveAspectRatio="none"'] : []),
  ];
  const replaced = fills ? /^(?:width|height|viewBox|preserveAspectRatio)$/ : /^(?:width|height|viewBox)$/;
  const tag = removeAttributes(text.slice(rootTag.start, rootTag.end), replaced);
  const sized = tag.replace(/^<[^\s/>]+/, (start) => [start, ...attributes].join(' '));
  const prolog = text.slice(0, rootTag.start).replace(/^\s*<\?xml[\s\S]*?\?>/, ''); // its encoding is not ours any more
  // The library takes for a drawing what has these four letters among its first thousand.
  return Buffer.from(
    `<!-- <svg drawn at ${widthPx} x ${heightPx} --> ${prolog}${sized}${text.slice(rootTag.end)}`,
  );
}

/** A view box of the canvas' own shape fills it: then rounding the canvas to pixels must leave no seam at its edges. */
const SAME_SHAPE = 1e-3;

/** The tag without the attributes of these names. Values are passed over whole, so that nothing inside them counts. */
function removeAttributes(tag: string, names: RegExp): string {
  return tag.replace(/(?<=\s)([^\s"'=<>/]+)\s*=\s*(?:"[^"]*"|'[^']*')/g, (all, name: string) =>
    names.test(name) ? '' : all,
  );
}
