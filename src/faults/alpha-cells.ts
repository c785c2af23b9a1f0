import { practiceLimit } from '../catalogue/practice.ts';
import type { RectPx } from '../geometry/rectangle.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';

/** Pixels of one kind of alpha, summed up cell by cell. */
export interface AlphaKind {
  readonly pixels: Int32Array;
  /** Sums of alpha, 0…255 each. */
  readonly alpha: Float64Array;
  /** Sums of red, green and blue, 0…1 each, weighted with alpha of 0…1: three per cell; gray three times. */
  readonly colour: Float64Array;
}

/** The alpha of a picture in square cells; cell i lies in row floor(i / columns). */
export interface AlphaCells {
  readonly boxPx: RectPx;
  readonly cellPx: number;
  readonly columns: number;
  readonly rows: number;
  /** Pixels with alpha > 0. */
  readonly visible: Int32Array;
  /** Of those, the ones between faint and nearly opaque. */
  readonly translucent: Int32Array;
  readonly faint: AlphaKind;
  /** Almost, but not quite opaque. */
  readonly nearly: AlphaKind;
}

/** Faint up to this alpha of 255, almost opaque from that one. */
export const FAINT_MOST = practiceLimit('haze-alpha').value;
const NEARLY_LEAST = practiceLimit('nearly-opaque').value;
/** A veil or a hole is judged by what a square of this side looks like: grain is below it, shadows are above (own choice). */
const CELL_MM = 1;

const known = new WeakMap<Raster, AlphaCells>();

/**
 * Sums the alpha within `boxPx` up in cells of about 1 mm, at least 1 px; once for each raster and scale. null in a
 * picture without alpha, and in inks. One pass; what is clear or opaque costs a comparison.
 */
export function measureAlphaCells(raster: Raster, boxPx: RectPx, pixelMm: number): AlphaCells | null {
  if (!raster.hasAlpha || raster.model === 'cmyk') return null;
  const cellPx = Math.max(1, Math.round(CELL_MM / pixelMm));
  const kept = known.get(raster);
  if (kept?.cellPx === cellPx && isSameBox(kept.boxPx, boxPx)) return kept;
  const cells = createCells(boxPx, cellPx);
  const units = alphaUnits(raster);
  for (let y = boxPx.y; y < boxPx.y + boxPx.height; y += 1) {
    const row = Math.floor((y - boxPx.y) / cellPx) * cells.columns;
    for (let i = 0; i < cells.columns; i += 1) {
      const from = boxPx.x + i * cellPx;
      const pixels = Math.min(cellPx, boxPx.x + boxPx.width - from);
      addPixels(units, cells, row + i, y * raster.widthPx + from, pixels);
    }
  }
  known.set(raster, cells);
  return cells;
}

/** The part of the picture that a cell holds. */
export function boxOfCell({ boxPx, cellPx, columns }: AlphaCells, cell: number): RectPx {
  const x = (cell % columns) * cellPx;
  const y = Math.floor(cell / columns) * cellPx;
  return {
    x: boxPx.x + x,
    y: boxPx.y + y,
    width: Math.min(cellPx, boxPx.width - x),
    height: Math.min(cellPx, boxPx.height - y),
  };
}

function isSameBox(a: RectPx, b: RectPx): boolean {
  return a.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

function createCells(boxPx: RectPx, cellPx: number): AlphaCells {
  const columns = Math.ceil(boxPx.width / cellPx);
  const rows = Math.ceil(boxPx.height / cellPx);
  const count = columns * rows;
  const kind = (): AlphaKind => ({
    pixels: new Int32Array(count),
    alpha: new Float64Array(count),
    colour: new Float64Array(3 * count),
  });
  return {
    boxPx,
    cellPx,
    columns,
    rows,
    visible: new Int32Array(count),
    translucent: new Int32Array(count),
    faint: kind(),
    nearly: kind(),
  };
}

/** How the samples of a raster lie. */
interface AlphaUnits {
  readonly data: Raster['data'];
  readonly step: number;
  readonly full: number;
  /** Where green and blue lie after red; gray three times. */
  readonly green: number;
  readonly blue: number;
  readonly faintBelow: number;
  readonly nearlyFrom: number;
}

function alphaUnits(raster: Raster): AlphaUnits {
  const full = fullScaleOf(raster);
  const scale = full / 255;
  const [green, blue] = raster.model === 'gray' ? [0, 0] : [1, 2];
  return {
    data: raster.data,
    step: channelsOf(raster),
    full,
    green,
    blue,
    faintBelow: (FAINT_MOST + 0.5) * scale,
    nearlyFrom: (NEARLY_LEAST - 0.5) * scale,
  };
}

/** Adds so many pixels, from a pixel of the raster on, to a cell. */
function addPixels(units: AlphaUnits, cells: AlphaCells, cell: number, pixel: number, count: number): void {
  const { data, step, full, faintBelow, nearlyFrom } = units;
  let seen = 0;
  const end = (pixel + count) * step;
  for (let at = pixel * step; at < end; at += step) {
    const alpha = data[at + step - 1]!;
    if (alpha === 0) continue;
    seen += 1;
    if (alpha === full) continue;
    if (alpha < faintBelow) addTo(cells.faint, units, cell, at, alpha);
    else if (alpha >= nearlyFrom) addTo(cells.nearly, units, cell, at, alpha);
    else cells.translucent[cell]! += 1;
  }
  cells.visible[cell]! += seen;
}

function addTo(
  kind: AlphaKind,
  { data, full, green, blue }: AlphaUnits,
  cell: number,
  at: number,
  alpha: number,
): void {
  const weight = alpha / full ** 2;
  kind.pixels[cell]! += 1;
  kind.alpha[cell]! += alpha / (full / 255);
  kind.colour[3 * cell]! += data[at]! * weight;
  kind.colour[3 * cell + 1]! += data[at + green]! * weight;
  kind.colour[3 * cell + 2]! += data[at + blue]! * weight;
}
