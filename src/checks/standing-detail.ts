import { type DetailCells, findDetailCells } from '../faults/detail-cells.ts';
import {
  findDetailClusters,
  findStrongAreas,
  measureSurround,
  type StrongArea,
} from '../faults/detail-clusters.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import { distanceInside } from '../geometry/signed-distance.ts';
import type { BlankInHand } from '../job/job.ts';
import { type LightnessCells, readLightnessCells } from '../raster/lightness-cells.ts';
import { wholeOf } from '../raster/pad.ts';
import type { PrintPicture } from './define-check.ts';

/** L* between the lightest and the darkest place of a cell that letters and features have: a quarter of the range (own choice). */
export const STRONG = 25;
/** Side of a sample and of a cell, mm, as near as whole pixels come (own choice: strokes of 0.25 mm are the finest that print). */
const SAMPLE_MM = 0.25;
const CELL_MM = 1;
/** Fewest cells: corners of frames have up to 10, an emblem of 3 mm has 13 (measured in the tests). */
const FEWEST = 12;
/** Detail over more of the print than this is what the picture is, not something in it (own choice). */
const LARGEST_SHARE = 0.15;
/** Half the contrast that counts: with less, or with plain edges only, the cells about a thing are calm (own choice). */
const BUSY = STRONG / 2;
/** Share of them that may not be: 0.01 about lettering, 0.13 and more about what is in a texture (measured in the tests). */
const MOST_BUSY = 0.1;
/** What ends with the print along more of its rim was meant to be cut (own choice: a word that is cut has far less). */
const MOST_AT_END = 0.2;
/** Of strong contrast that runs off the print, so much is detail in lettering; stems, petals and horizons have less (own choice). */
const LETTERING = 0.7;
/** Of a thing's own edges, so much is detail at least; of a long outline that it touches, less (own choice). */
const OUTLINED = 0.25;

/** Detail that stands out from what is about it: the places of its edges on the blank, by cells. */
export interface StandingDetail {
  readonly cells: readonly (readonly PointMm[])[];
  /** It touches the end of the print: what is beyond is not known. */
  readonly isCut: boolean;
}

/** Lettering, features and emblems of a print, largest first; what is busy all over or runs off the print is none. Gray or rgb. */
export function findStandingDetail(picture: PrintPicture, { edge, bleed }: BlankInHand): StandingDetail[] {
  const { raster, originMm, pixelMm } = picture;
  const samplePx = Math.max(1, Math.round(SAMPLE_MM / pixelMm));
  const box = wholeOf(raster);
  const samples = readLightnessCells(raster, box, Math.ceil(Math.max(box.width, box.height) / samplePx));
  const sampleMm = samples.cellPx * pixelMm;
  const side = Math.max(1, Math.round(CELL_MM / sampleMm));
  const cells = findDetailCells(samples, side, STRONG);
  const at = (column: number, row: number): PointMm => ({
    x: originMm.x + column * sampleMm,
    y: originMm.y + row * sampleMm,
  });
  const printed = Uint8Array.from(cells.contrast, (_, cell) => {
    const { x, y } = at(((cell % cells.width) + 0.5) * side, (Math.floor(cell / cells.width) + 0.5) * side);
    return distanceInside(edge, x, y) > -bleed.value ? 1 : 0;
  });
  return listStanding(cells, printed).map((cluster) => ({
    isCut: cluster.isCut,
    cells: cluster.cells.map((cell) => findEdges(samples, side, cell, cells, at)),
  }));
}

/** Clusters that stand out, and whether any of each lies at the end of the print. */
function listStanding(
  cells: DetailCells,
  printed: Uint8Array,
): { cells: readonly number[]; isCut: boolean }[] {
  const largest = LARGEST_SHARE * printed.reduce((sum, is) => sum + is, 0);
  const areas = findStrongAreas(cells, printed, STRONG);
  return findDetailClusters(cells, printed)
    .filter(({ length }) => length >= FEWEST && length <= largest)
    .flatMap((cluster) => {
      if (runsOffAsLines(cluster, areas)) return [];
      const { shareBusy, shareAtEnd } = measureSurround(cluster, cells, printed, BUSY);
      if (shareBusy > MOST_BUSY || shareAtEnd > MOST_AT_END) return [];
      return [{ cells: withItsEdges(cluster, areas), isCut: shareAtEnd > 0 }];
    });
}

/** The plain edges that its detail is part of belong to it too: the rest of a large letter, or of a mouth. */
function withItsEdges(cluster: readonly number[], areas: readonly (StrongArea | null)[]): readonly number[] {
  const own = new Set(
    cluster
      .map((cell) => areas[cell]!)
      .filter(({ runsOff, detail, cells }) => !runsOff && detail >= OUTLINED * cells),
  );
  const within = new Set(cluster);
  areas.forEach((area, cell) => {
    if (area !== null && own.has(area)) within.add(cell);
  });
  return [...within];
}

/** What it is part of goes on to the end of the print, mostly as plain edges. */
function runsOffAsLines(cluster: readonly number[], areas: readonly (StrongArea | null)[]): boolean {
  const own = [...new Set(cluster.map((cell) => areas[cell]!))];
  const sum = (key: 'cells' | 'detail') => own.reduce((all, area) => all + area[key], 0);
  return own.some(({ runsOff }) => runsOff) && sum('detail') < LETTERING * sum('cells');
}

/** Between which samples of a cell its lightness changes, by a quarter of the contrast that it has. */
function findEdges(
  { width, height, values }: LightnessCells,
  side: number,
  cell: number,
  cells: DetailCells,
  at: (column: number, row: number) => PointMm,
): PointMm[] {
  const least = cells.contrast[cell]! / 4;
  const [left, top] = [(cell % cells.width) * side, Math.floor(cell / cells.width) * side];
  const points: PointMm[] = [];
  for (let row = top; row < Math.min(height - 1, top + side); row += 1)
    for (let column = left; column < Math.min(width - 1, left + side); column += 1) {
      const own = row * width + column;
      const four = [values[own]!, values[own + 1]!, values[own + width]!, values[own + width + 1]!];
      if (Math.max(...four) - Math.min(...four) >= least) points.push(at(column + 1, row + 1));
    }
  return points;
}
