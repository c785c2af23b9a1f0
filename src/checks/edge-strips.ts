import { type EdgePoint, walkEdge } from '../geometry/edge-walk.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { BlankInHand } from '../job/job.ts';
import { type PixelsOverWhite, pixelsOverWhite, writeOverWhite } from '../raster/colour-over-white.ts';
import type { PrintPicture } from './define-check.ts';

/** The colours that a ray from the edge inwards meets, three numbers of 0…255 a sample. */
export type EdgeStrip = Float32Array;

export interface EdgeStrips {
  readonly strips: readonly EdgeStrip[];
  /** Of the edge that is judged, rays lost at corners included. */
  readonly rays: number;
  /** Between two samples of a strip; the first lies on the edge. */
  readonly stepMm: number;
}

/** Rays round the whole edge: enough that twelve in a hundred of them are many (own choice). */
const RAYS = 400;

/**
 * What lies within `reachMm` of the edge, along its normals. Near a corner a normal runs along the strip of the next
 * side: only rays that stay as far from the whole edge as they are long are kept. On a whole wrap rim and foot count.
 */
export function readEdgeStrips(picture: PrintPicture, blank: BlankInHand, reachMm: number): EdgeStrips {
  const { edge } = blank;
  const { pixelMm } = picture;
  const pixels = pixelsOverWhite(picture.raster);
  const stepMm = Math.min(pixelMm, 0.125);
  const samples = Math.ceil(reachMm / stepMm) + 1;
  const spacingMm = (2 * (edge.box.width + edge.box.height)) / RAYS;
  const points = walkEdge(edge, spacingMm, 0).filter(
    ({ lengthMm, normalX, normalY }) =>
      lengthMm > 0 && (blank.safeSides === 'all' || Math.abs(normalY) > Math.abs(normalX)),
  );
  const strips: EdgeStrip[] = [];
  for (const point of points) {
    const { x, y, normalX, normalY } = point;
    const inside = distanceInside(edge, x - normalX * reachMm, y - normalY * reachMm);
    if (inside > reachMm - stepMm) strips.push(readStrip(pixels, picture, point, stepMm, samples));
  }
  return { strips, rays: points.length, stepMm };
}

function readStrip(
  pixels: PixelsOverWhite,
  { originMm, pixelMm }: PrintPicture,
  { x, y, normalX, normalY }: EdgePoint,
  stepMm: number,
  samples: number,
): EdgeStrip {
  const strip = new Float32Array(3 * samples);
  for (let i = 0; i < samples; i += 1) {
    const xMm = x - normalX * i * stepMm - originMm.x;
    const yMm = y - normalY * i * stepMm - originMm.y;
    writeOverWhite(pixels, xMm / pixelMm, yMm / pixelMm, strip, 3 * i);
  }
  return strip;
}
