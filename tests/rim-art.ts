import sharp from 'sharp';
import { letter } from '../src/lettering/letter.ts';
import { createRaster, type Raster } from '../src/raster/raster.ts';
import { pathData } from '../src/reports/picture/set-lines.ts';

/** Pixels a millimetre of art that is printed `RIM_ART_MM` wide: the plate of 100 mm and its bleed of 3 mm. */
const PX = 8;
export const RIM_ART_MM = 106;

/** mm on the plate, from the middle of its edge's left upper corner: negative in the bleed. */
export interface Mark {
  readonly what: 'text' | 'face' | 'emblem';
  /** Height of its capitals, or its width. */
  readonly sizeMm: number;
  /** From the end of its ink to the edge of the plate on that side; negative where it crosses it. */
  readonly gapMm: number;
  readonly side?: 'top' | 'right' | 'bottom' | 'left';
  /** From the middle of the side, along it. */
  readonly alongMm?: number;
  readonly text?: string;
}

/** A gray of this L*, as a colour of SVG (inverse of CIE 15 and of the sRGB curve). */
export function grayOf(lightness: number): string {
  const y = lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / 903.3;
  const coded = y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055;
  const code = Math.round(255 * Math.min(1, Math.max(0, coded)));
  return `rgb(${code},${code},${code})`;
}

/** The mark as SVG with the middle of its box at 0, 0, and half its height. */
function drawMark({ what, sizeMm, text = 'Plant sale' }: Mark, ink: string) {
  const r = sizeMm / 2;
  if (what === 'text') {
    const { path, boxMm } = letter(text, { capHeightMm: sizeMm, at: { x: 0, y: 0 } });
    const { x, y, width, height } = boxMm!;
    const moved = `translate(${-x - width / 2} ${-y - height / 2})`;
    return { half: height / 2, svg: `<path transform="${moved}" fill="${ink}" d="${pathData(path)}"/>` };
  }
  if (what === 'face') {
    const eyes = [-0.36, 0.36].map(
      (at) => `<circle cx="${at * r}" cy="${-0.25 * r}" r="${0.16 * r}" fill="${ink}"/>`,
    );
    const mouth = `<path d="M${-0.5 * r} ${0.25 * r}Q0 ${0.85 * r} ${0.5 * r} ${0.25 * r}" stroke="${ink}" stroke-width="${0.14 * r}" fill="none"/>`;
    // Paler than the limit, and cut where it may: its features are what a gap is measured to.
    const disc = `<circle r="${r}" fill="#fff" fill-opacity="0.25"/>`;
    return { half: 0.62 * r, svg: [disc, ...eyes, mouth].join('') };
  }
  const rays = Array.from({ length: 12 }, (_, i) => {
    const [a, b] = [(i * Math.PI) / 6, ((i + 0.5) * Math.PI) / 6];
    const at = (far: number, turn: number) => `${far * r * Math.cos(turn)} ${far * r * Math.sin(turn)}`;
    return `M${at(0.3, a)}L${at(1, a)}L${at(1, b)}L${at(0.3, b)}Z`;
  });
  return {
    half: r,
    svg: `<path d="${rays.join('')}" fill="${ink}"/><circle r="${0.22 * r}" fill="${ink}"/>`,
  };
}

const TURN = { bottom: 0, left: 90, top: 180, right: 270 } as const;

/** Marks of one gray, at the sides of the plate, on a ground given as SVG (in mm, the edge of the plate at 0 and 100). */
export async function paintRim(
  marks: readonly Mark[],
  {
    ink = grayOf(25),
    ground = grayOf(85),
    under = '',
  }: { ink?: string; ground?: string; under?: string } = {},
): Promise<Raster> {
  const drawn = marks.map((mark) => {
    const { half, svg } = drawMark(mark, ink);
    const { side = 'bottom', alongMm = 0, gapMm } = mark;
    return `<g transform="translate(50 50) rotate(${TURN[side]}) translate(${alongMm} ${50 - gapMm - half})">${svg}</g>`;
  });
  return drawOnPlate(`${under}${drawn.join('')}`, ground);
}

/** What is drawn over a ground, in mm, the edge of the plate at 0 and 100. */
export async function drawOnPlate(inner: string, ground = grayOf(85)): Promise<Raster> {
  const side = RIM_ART_MM * PX;
  const box = `-3 -3 ${RIM_ART_MM} ${RIM_ART_MM}`;
  const under = `<rect x="-3" y="-3" width="100%" height="100%" fill="${ground}"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" viewBox="${box}">${under}${inner}</svg>`;
  const { data, info } = await sharp(Buffer.from(svg))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return {
    ...createRaster({ widthPx: 1, heightPx: 1, model: 'rgb', hasAlpha: false, depth: 8 }),
    widthPx: info.width,
    heightPx: info.height,
    data: Uint8Array.from(data),
  };
}
