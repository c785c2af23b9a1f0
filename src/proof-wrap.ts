import { drawMarksOver } from './formats/draw-marks.ts';
import type { Limits } from './formats/limits.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { moveDrawing } from './geometry/rigid-move.ts';
import { boxAround, type Sector } from './geometry/sector.ts';
import type { BlankInHand } from './job/job.ts';
import type { WrapInHand } from './job/wrap-in-hand.ts';
import { drawView, type UnrolledProof, viewsOf } from './pictures/draw-views.ts';
import { outlineOfPaper } from './pictures/outline-of-paper.ts';
import { MARGIN_MM, type ProofFrame } from './pictures/proof-frame.ts';
import { rowOf, setViews } from './pictures/set-views.ts';
import { bendOf } from './prepare/bend-step.ts';
import { bendRaster } from './raster/bend.ts';
import { layOnto } from './raster/lay-onto.ts';
import { createRaster, type Raster } from './raster/raster.ts';

/**
 * The proof of a round blank, made of the proof of its strip: the body from four sides above, the flat paper with its
 * outline below. 8-bit rgb with alpha, at least `leastWidthPx` wide.
 */
export async function proofWrap(
  strip: Raster,
  frame: ProofFrame,
  { baseColour, wrap }: Pick<BlankInHand, 'baseColour'> & { readonly wrap: WrapInHand },
  {
    capitalsMm,
    leastWidthPx,
    limits,
  }: { readonly capitalsMm: number; readonly leastWidthPx: number; readonly limits: Limits },
): Promise<Raster> {
  const flat = await layFlatPaper(strip, frame, wrap, limits);
  const views = viewsOf(wrap);
  const row = rowOf(wrap, capitalsMm);
  const pxPerMm = Math.min(frame.ppi / MM_PER_INCH, flat.widthPx / (views.length * row.columnMm));
  const columnPx = Math.floor(row.columnMm * pxPerMm);
  // Columns have whole pixels: what is drawn over them is scaled to these.
  const perMm = columnPx / row.columnMm;
  const viewed = emptyPicture(columnPx * views.length, Math.ceil(row.heightMm * perMm));
  const unrolled: UnrolledProof = { raster: strip, stripPx: frame.blankPx };
  for (const [column, { turn }] of views.entries()) {
    const view = drawView(unrolled, wrap, baseColour, turn, perMm);
    layOnto(
      viewed,
      view,
      Math.round((column + 0.5) * columnPx - view.widthPx / 2),
      Math.round(row.topMm * perMm),
    );
  }
  const perInch = perMm * MM_PER_INCH;
  const outlined = await drawMarksOver(
    viewed,
    setViews(wrap, views, capitalsMm),
    { x: perInch, y: perInch },
    limits,
  );
  const whole = emptyPicture(
    Math.max(leastWidthPx, flat.widthPx, outlined.widthPx),
    outlined.heightPx + flat.heightPx,
  );
  layOnto(whole, outlined, Math.round((whole.widthPx - outlined.widthPx) / 2), 0);
  layOnto(whole, flat, Math.round((whole.widthPx - flat.widthPx) / 2), outlined.heightPx);
  return whole;
}

async function layFlatPaper(
  strip: Raster,
  { ppi }: ProofFrame,
  wrap: WrapInHand,
  limits: Limits,
): Promise<Raster> {
  const { sector } = wrap.development;
  const flat = sector ? bendProof(strip, sector, ppi) : strip;
  const perMm = ppi / MM_PER_INCH;
  const { widthMm, heightMm } = wrap.development;
  const by = { x: (flat.widthPx / perMm - widthMm) / 2, y: (flat.heightPx / perMm - heightMm) / 2 };
  return drawMarksOver(flat, moveDrawing(outlineOfPaper(wrap), { by }), { x: ppi, y: ppi }, limits);
}

function bendProof(strip: Raster, sector: Sector, ppi: number): Raster {
  const { width, height } = boxAround(sector, MARGIN_MM);
  const toPx = (mm: number) => Math.ceil((mm / MM_PER_INCH) * ppi);
  const { outerRadiusMm, innerRadiusMm, angleRad, opens } = sector;
  return bendRaster(
    strip,
    bendOf({
      step: 'bend',
      outerRadiusMm,
      innerRadiusMm,
      angleDeg: (angleRad * 180) / Math.PI,
      opens,
      bleedMm: MARGIN_MM,
      ppi,
      widthPx: toPx(width),
      heightPx: toPx(height),
    }),
  );
}

function emptyPicture(widthPx: number, heightPx: number): Raster {
  return createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: true, depth: 8 });
}
