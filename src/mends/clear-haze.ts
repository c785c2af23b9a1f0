import { boxOfCell, FAINT_MOST } from '../faults/alpha-cells.ts';
import { visitNeighbours } from '../faults/cell-areas.ts';
import { findVeils, type Veil, type Veils } from '../faults/find-veils.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import type { MendContext, MendDefinition, MendedRaster } from './define-mend.ts';

/** Grain of single pixels that still belongs to a veil, alpha of 255 above its mean (own choice). */
const GRAIN = 4;

export default {
  id: 'clear-haze',
  title: 'Clear the haze left by a cut-out',
  reason:
    'Makes the veils that the check of haze finds fully clear, up to the art. Soft edges, glows and shadows fade, and stay.',
  source: ['the limits of the check of haze', `${GRAIN} of 255 for the grain of a veil (own choice)`],
  answers: ['alpha-haze/veil'],
  gentle: true,
  apply(raster, { job, source }: MendContext): MendedRaster {
    let mended = raster;
    // What is left may print larger, and a veil that was too small to be seen may come to be large enough.
    for (;;) {
      const placed = job(mended);
      if (placed === null) return { raster: mended };
      const found = findVeils(mended, {
        boxPx: placed.contentBoxPx,
        pixelMm2: pixelAreaOf(placed),
        source,
        base: placed.blank.baseColour,
      });
      if (found === null) return { raster: mended };
      mended = clearVeils(mended, found);
    }
  },
} satisfies MendDefinition;

function clearVeils(raster: Raster, { veils, cells }: Veils): Raster {
  const data = raster.data.slice();
  const step = channelsOf(raster);
  const scale = fullScaleOf(raster) / 255;
  for (const veil of veils) {
    const most = Math.min(FAINT_MOST + 0.5, veil.alpha + GRAIN) * scale;
    for (const cell of withRim(veil, cells)) {
      const { x, y, width, height } = boxOfCell(cells, cell);
      for (let row = y; row < y + height; row += 1) {
        const from = (row * raster.widthPx + x) * step;
        for (let at = from; at < from + width * step; at += step)
          if (data[at + step - 1]! <= most) data.fill(0, at, at + step);
      }
    }
  }
  return { ...raster, data };
}

/** Its cells, and those next to them in which art is in the majority: there it lies in what the art leaves open. */
function withRim({ area }: Veil, cells: Veils['cells']): ReadonlySet<number> {
  const all = new Set(area);
  visitNeighbours(cells, area, (next) => {
    if (next !== -1 && 2 * cells.faint.pixels[next]! < cells.visible[next]!) all.add(next);
  });
  return all;
}
