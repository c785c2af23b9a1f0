import type { DrawnItem, InkColour } from '../../geometry/drawing.ts';
import type { MarkBlock } from './mark-block.ts';
import { BLACK, LINE_MM } from './mark-style.ts';
import { withCaption } from './text-block.ts';

const INKS: readonly InkColour[] = [
  { r: 0, g: 255, b: 255 },
  { r: 255, g: 0, b: 255 },
  { r: 255, g: 255, b: 0 },
  BLACK,
];

/** Solid bars, one near each ink of the printer: a nozzle that is blocked leaves a white line across its bar. */
export function nozzleBars(): MarkBlock {
  const [barMm, heightMm] = [8, 8];
  const drawing = INKS.map((colour, i) => patch(i * barMm, 0, barMm, heightMm, colour));
  return withCaption({ widthMm: INKS.length * barMm, heightMm, drawing }, [
    'White lines: clean the nozzles.',
  ]);
}

const STEPS = 10;

/** Grays from the paper's white to black in equal steps of the file: each must differ from its neighbours. */
export function stepWedge(): MarkBlock {
  const [patchMm, heightMm] = [5, 6];
  const widthMm = (STEPS + 1) * patchMm;
  const patches = Array.from({ length: STEPS + 1 }, (_, i) => {
    const level = Math.round(255 * (1 - i / STEPS));
    return patch(i * patchMm, 0, patchMm, heightMm, { r: level, g: level, b: level });
  });
  // A rim, so that the white patch is seen to be one.
  const rim = [
    patch(0, 0, widthMm, LINE_MM, BLACK),
    patch(0, heightMm - LINE_MM, widthMm, LINE_MM, BLACK),
    patch(0, 0, LINE_MM, heightMm, BLACK),
  ];
  return withCaption({ widthMm, heightMm, drawing: [...patches, ...rim] }, ['Eleven steps: no two alike.']);
}

function patch(x: number, y: number, width: number, height: number, colour: InkColour): DrawnItem {
  return { kind: 'rect', rectMm: { x, y, width, height }, colour };
}
