import type { Drawing } from '../geometry/drawing.ts';
import { findItemBounds } from '../geometry/drawing-bounds.ts';
import { MM_PER_INCH } from '../geometry/length.ts';
import type { RectMm, RectPx } from '../geometry/rectangle.ts';
import { layOver } from '../raster/lay-over.ts';
import type { Raster } from '../raster/raster.ts';
import { drawnLength, drawSizedSvg } from './draw-sized-svg.ts';
import { drawingToSvg } from './drawing-to-svg.ts';
import type { Limits } from './limits.ts';

/** Pixels per inch along each axis: they differ where a printer's feed is corrected. */
export interface Resolution {
  readonly x: number;
  readonly y: number;
}

/**
 * The picture with a drawing over it, of the picture's own shape and depth; rgb, with or without alpha. A point at x mm
 * lies at x / 25.4 * ppi pixels from the left edge, and so downwards. Edges are smoothed, exact to 1/256 pixel. What lies
 * beyond the picture is cut; where the drawing has no ink, no pixel changes.
 * @throws `too-slow`
 */
export async function drawMarksOver(
  raster: Raster,
  drawing: Drawing,
  ppi: Resolution,
  limits: Limits,
): Promise<Raster> {
  const drawn = { ...raster, data: raster.data.slice() };
  await drawInto(drawn, drawing, ppi, limits);
  return drawn;
}

/** Marks are few and far apart: only the squares of this side that hold some are drawn, and one after the other. */
const TILE_PX = 1024;

async function drawInto(raster: Raster, drawing: Drawing, ppi: Resolution, limits: Limits): Promise<void> {
  const items = drawing.map((item) => ({ item, boundsMm: findItemBounds(item) }));
  for (const tile of tilesOf(raster)) {
    const windowMm = inMillimetres(tile, ppi);
    const inside = items.filter(({ boundsMm }) => boundsMm && meet(boundsMm, windowMm));
    if (inside.length === 0) continue;
    const markup = drawingToSvg(
      inside.map(({ item }) => item),
      windowMm,
      { width: drawnLength(tile.width), height: drawnLength(tile.height) },
    );
    const layer = await drawSizedSvg(
      Buffer.from(markup),
      { widthPx: tile.width, heightPx: tile.height },
      limits,
    );
    layOver(raster, layer, tile);
  }
}

function tilesOf({ widthPx, heightPx }: Raster): RectPx[] {
  const tiles: RectPx[] = [];
  for (let y = 0; y < heightPx; y += TILE_PX)
    for (let x = 0; x < widthPx; x += TILE_PX)
      tiles.push({ x, y, width: Math.min(TILE_PX, widthPx - x), height: Math.min(TILE_PX, heightPx - y) });
  return tiles;
}

function inMillimetres({ x, y, width, height }: RectPx, ppi: Resolution): RectMm {
  const [perX, perY] = [MM_PER_INCH / ppi.x, MM_PER_INCH / ppi.y];
  return { x: x * perX, y: y * perY, width: width * perX, height: height * perY };
}

/** Boxes that only touch meet too: smoothing never reaches over a pixel, rounding might. */
function meet(one: RectMm, other: RectMm): boolean {
  return (
    one.x <= other.x + other.width &&
    other.x <= one.x + one.width &&
    one.y <= other.y + other.height &&
    other.y <= one.y + one.height
  );
}
