import type { InkColour } from '../geometry/drawing.ts';
import type { RectMm } from '../geometry/rectangle.ts';
import type { WrapInHand } from '../job/wrap-in-hand.ts';
import { createRaster, type Raster } from '../raster/raster.ts';

/** The proof of a strip, unrolled: 8-bit rgb with alpha; and where the strip lies on it, in its pixels. */
export interface UnrolledProof {
  readonly raster: Raster;
  readonly stripPx: RectMm;
}

/** One side that a body is looked at from: share of a turn from handle or seam, to the paper's right. */
export interface View {
  readonly name: string;
  readonly turn: number;
}

/** Opposite handle or seam, then turned by a quarter each time. */
export function viewsOf({ wayRound }: Pick<WrapInHand, 'wayRound'>): readonly View[] {
  const back = wayRound === 'part' ? 'handle' : 'seam';
  return [
    { name: `front, opposite the ${back}`, turn: 1 / 2 },
    { name: 'right end of the paper', turn: 3 / 4 },
    { name: `back, ${back}`, turn: 0 },
    { name: 'left end of the paper', turn: 1 / 4 },
  ];
}

/** Height and greatest radius of a whole body, mm. */
export function bodySizeOf(wrap: WrapInHand): { readonly heightMm: number; readonly radiusMm: number } {
  const heightMm = wrap.clearTopMm + wrap.band.heightMm + wrap.clearBaseMm;
  return { heightMm, radiusMm: Math.max(radiusAt(wrap, 0), radiusAt(wrap, heightMm)) };
}

/** Radius of the body so far below its rim, its sides taken as straight from rim to foot. */
export function radiusAt({ band, clearTopMm }: WrapInHand, downMm: number): number {
  const perMm = (band.bottomDiameterMm - band.topDiameterMm) / band.heightMm;
  return (band.topDiameterMm + (downMm - clearTopMm) * perMm) / 2;
}

/** Smaller squares that a pixel of a view is made of, along each side. */
const FINER = 2;

/**
 * A body as it is seen from one side, square to its axis: each point of the picture is met by a parallel ray, which meets
 * the body at asin(x / r) from the middle of the view. Bare base above, below and beside the print; clear beside the body.
 * 8-bit rgb with alpha, `pxPerMm` pixels a mm, as wide as the widest of the body.
 */
export function drawView(
  { raster: unrolled, stripPx }: UnrolledProof,
  wrap: WrapInHand,
  base: InkColour,
  turn: number,
  pxPerMm: number,
): Raster {
  const { heightMm, radiusMm } = bodySizeOf(wrap);
  const widthPx = Math.ceil(2 * radiusMm * pxPerMm);
  const heightPx = Math.ceil(heightMm * pxPerMm);
  const view = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: true, depth: 8 });
  const { onceRoundMm, strip } = wrap.development;
  const startMm = wrap.wayRound === 'whole' ? 0 : (onceRoundMm - strip.widthMm) / 2;
  const perMm = stripPx.width / strip.widthMm;
  const perSlantMm = stripPx.height / strip.heightMm;
  const at = (downMm: number, across: number, sums: Float64Array) => {
    const radius = radiusAt(wrap, downMm);
    if (Math.abs(across) > radius) return;
    const share = (downMm - wrap.clearTopMm) / wrap.band.heightMm;
    const along = placeRound(turn + Math.asin(across / radius) / (2 * Math.PI), onceRoundMm, startMm);
    const onStrip = share >= 0 && share < 1 && along >= 0 && along < strip.widthMm;
    const x = Math.floor(stripPx.x + along * perMm);
    const y = Math.floor(stripPx.y + share * strip.heightMm * perSlantMm);
    const source = onStrip ? (y * unrolled.widthPx + x) * 4 : -1;
    const bare = source < 0 || unrolled.data[source + 3] === 0;
    sums[0]! += bare ? base.r : unrolled.data[source]!;
    sums[1]! += bare ? base.g : unrolled.data[source + 1]!;
    sums[2]! += bare ? base.b : unrolled.data[source + 2]!;
    sums[3]! += 1;
  };
  const sums = new Float64Array(4);
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) {
      sums.fill(0);
      for (let i = 0; i < FINER * FINER; i += 1) {
        const down = (y + ((i >> 1) + 0.5) / FINER) / pxPerMm;
        if (down < heightMm) at(down, (x + ((i & 1) + 0.5) / FINER - widthPx / 2) / pxPerMm, sums);
      }
      if (sums[3] === 0) continue;
      const to = (y * widthPx + x) * 4;
      for (let i = 0; i < 3; i += 1) view.data[to + i] = Math.round(sums[i]! / sums[3]!);
      view.data[to + 3] = Math.round((255 * sums[3]!) / (FINER * FINER));
    }
  return view;
}

/** Where along the strip a share of a turn from handle or seam lies; the overlap lies beneath, so the first turn is seen. */
function placeRound(turn: number, onceRoundMm: number, startMm: number): number {
  return (turn - Math.floor(turn)) * onceRoundMm - startMm;
}
