import type { InkColour } from '../geometry/drawing.ts';
import type { ProofTable } from '../icc/proof-table.ts';
import type { BlankInHand } from '../job/job.ts';
import { coverRow } from '../raster/line-coverage.ts';
import { createRaster, type Raster } from '../raster/raster.ts';
import { tabulateDyeOnBase } from './dye-on-base.ts';
import type { GamutMarks } from './gamut-marks.ts';
import type { PrintRows } from './print-rows.ts';
import { distanceInProof, type ProofFrame } from './proof-frame.ts';

/**
 * The pressed blank as seen from the front, 8-bit sRGB with alpha: dye on the base colour within the printable edge,
 * the bare base beyond it, nothing beside the outline and in holes. Edges are smooth.
 */
export function drawProof(
  rows: PrintRows,
  blank: Pick<BlankInHand, 'outline' | 'edge' | 'holes' | 'baseColour'>,
  frame: ProofFrame,
  table: ProofTable,
  { marks }: { readonly marks: GamutMarks | null },
): Raster {
  const { blankPx, onPrintPx, widthPx: width } = frame;
  const { heightPx } = frame;
  const raster = createRaster({ widthPx: width, heightPx, model: 'rgb', hasAlpha: true, depth: 8 });
  const distance = (shape: BlankInHand['edge']) => distanceInProof(shape, frame);
  const outline = distance(blank.outline);
  const edge = blank.edge === blank.outline ? null : distance(blank.edge);
  const holes = blank.holes.map(({ shape }) => distance(shape));
  const onBase = tabulateDyeOnBase(blank.baseColour);
  const [solid, dyed, hole] = [new Uint8Array(width), new Uint8Array(width), new Uint8Array(width)];
  const convert = rowConverter(rows, table, width);
  const printed = new Uint16Array(3 * width);
  for (let y = blankPx.y; y < blankPx.y + blankPx.height; y += 1) {
    coverRow(outline, y, solid);
    if (edge === null) dyed.fill(255);
    else takeShare(edge, y, dyed, solid);
    for (const distanceInHole of holes) {
      coverRow(distanceInHole, y, hole);
      for (let x = 0; x < width; x += 1) solid[x] = Math.min(solid[x]!, 255 - hole[x]!);
    }
    convert(onPrintPx.x, onPrintPx.y + y, printed);
    const target = raster.data.subarray(4 * y * width, 4 * (y + 1) * width) as Uint8Array;
    layRow(target, printed, solid, dyed, onBase, blank.baseColour);
    marks?.paintRow(target, y, onPrintPx, dyed);
  }
  return raster;
}

/** Reads a row and brings it to how it looks once printed. */
function rowConverter(
  rows: PrintRows,
  table: ProofTable,
  width: number,
): (x: number, y: number, printed: Uint16Array) => void {
  const [print8, print16] = [new Uint8Array(3 * width), new Uint16Array(3 * width)];
  return (x, y, printed) => {
    rows.read(x, y, rows.depth === 8 ? print8 : print16);
    if (rows.depth === 8) table.convert8(print8, printed, width);
    else table.convert16(print16, printed, width);
  };
}

/** How much of what is there of a pixel can carry dye: all of it where outline and edge are one line. */
function takeShare(
  edge: ReturnType<typeof distanceInProof>,
  y: number,
  dyed: Uint8Array,
  solid: Uint8Array,
): void {
  coverRow(edge, y, dyed);
  for (let x = 0; x < dyed.length; x += 1)
    if (dyed[x]! > 0 && solid[x]! < 255)
      dyed[x] = solid[x] === 0 ? 0 : Math.min(255, Math.round((dyed[x]! / solid[x]!) * 255));
}

function layRow(
  target: Uint8Array,
  printed: Uint16Array,
  solid: Uint8Array,
  dyed: Uint8Array,
  [onRed, onGreen, onBlue]: ReturnType<typeof tabulateDyeOnBase>,
  { r, g, b }: InkColour,
): void {
  for (let x = 0; x < solid.length; x += 1) {
    if (solid[x] === 0) continue;
    const share = dyed[x]! / 255;
    const at = 4 * x;
    target[at] = Math.round(onRed[printed[3 * x]!]! * share + r * (1 - share));
    target[at + 1] = Math.round(onGreen[printed[3 * x + 1]!]! * share + g * (1 - share));
    target[at + 2] = Math.round(onBlue[printed[3 * x + 2]!]! * share + b * (1 - share));
    target[at + 3] = solid[x]!;
  }
}
