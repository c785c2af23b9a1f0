import type { VectorFacts } from './artwork.ts';
import type { Limits } from './limits.ts';
import type { PlacedPicture } from './svg-pictures.ts';
import { stretchOf, viewBoxScale } from './svg-transform.ts';

type InnerPicture = VectorFacts['pictures'][number];

/**
 * Pixels of each picture inside a drawing, and how large the drawing shows them.
 * @param drawnPerNatural pixels as drawn for one pixel of the natural size, per axis
 * Pictures whose header cannot be read are drawn as nothing, and counted as unplaced.
 */
export async function measureInnerPictures(
  placed: readonly PlacedPicture[],
  drawnPerNatural: { readonly x: number; readonly y: number },
  limits: Limits,
): Promise<{ readonly pictures: readonly InnerPicture[]; readonly unplaced: number }> {
  const sizes = new Map<string, { width: number; height: number } | null>();
  for (const { href } of placed) if (!sizes.has(href)) sizes.set(href, await readSize(href, limits));
  const pictures = placed.flatMap((picture) => {
    const size = sizes.get(picture.href);
    return size ? [showPicture(picture, size, drawnPerNatural)] : [];
  });
  return { pictures, unplaced: placed.length - pictures.length };
}

async function readSize(href: string, limits: Limits): Promise<{ width: number; height: number } | null> {
  const { default: sharp } = await import('sharp');
  const comma = href.indexOf(',');
  const base64 = /;\s*base64\s*$/i.test(href.slice(0, comma));
  const bytes = base64
    ? Buffer.from(href.slice(comma + 1), 'base64')
    : Buffer.from(unescapeBytes(href.slice(comma + 1)), 'latin1');
  try {
    return await sharp(bytes, { limitInputPixels: limits.maxPixels }).metadata();
  } catch {
    return null;
  }
}

/** Percent-encoded bytes of a data address (RFC 2397). */
function unescapeBytes(text: string): string {
  return text.replace(/%([0-9a-f]{2})/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}

/** The picture fits its frame by `preserveAspectRatio`; where the frame has no size, it takes the picture's. */
function showPicture(
  picture: PlacedPicture,
  size: { width: number; height: number },
  drawn: { readonly x: number; readonly y: number },
): InnerPicture {
  const ratio = size.width / size.height;
  const width = picture.width ?? (picture.height === null ? size.width : picture.height * ratio);
  const height = picture.height ?? width / ratio;
  const scale = viewBoxScale({ width, height }, size, picture.preserveAspectRatio);
  const { a, b, c, d } = picture.toNatural;
  const stretch = stretchOf({ a: a * drawn.x, b: b * drawn.y, c: c * drawn.x, d: d * drawn.y });
  return {
    widthPx: size.width,
    heightPx: size.height,
    shownWidthPx: size.width * scale.x * stretch.x,
    shownHeightPx: size.height * scale.y * stretch.y,
  };
}
