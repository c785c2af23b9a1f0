import type { Drawing, DrawnItem, InkColour } from '../geometry/drawing.ts';
import type { PathCommand } from '../geometry/path.ts';
import type { PointMm } from '../geometry/rectangle.ts';

/**
 * The operators that draw vector marks where one unit is a millimetre and y points down, in the colour space that is
 * current for filling and stroking, of 3 samples (rgb) or 4 (inks). Empty for an empty drawing.
 * @see ISO 32000-1:2008, 8.5 (paths), 8.6.8 (colour operators)
 */
export function writePdfDrawing(drawing: Drawing, model: 'rgb' | 'cmyk'): string {
  return drawing.map((item) => drawItem(item, model)).join('\n');
}

function drawItem(item: DrawnItem, model: 'rgb' | 'cmyk'): string {
  const colour = samplesOf(item.colour, model).map(decimal).join(' ');
  if (item.kind === 'path') return `${colour} sc ${writePdfPath(item.path)} f`;
  if (item.kind === 'rect') {
    const { x, y, width, height } = item.rectMm;
    return `${colour} sc ${[x, y, width, height].map(decimal).join(' ')} re f`;
  }
  const { from, to, widthMm, dashesMm = [] } = item;
  const dashes = `[${dashesMm.map(decimal).join(' ')}] 0 d`;
  return `${colour} SC ${decimal(widthMm)} w ${dashes} ${at(from)} m ${at(to)} l S`;
}

/** The operators that build a path of filled outlines, to be painted or clipped to. */
export function writePdfPath(path: readonly PathCommand[]): string {
  let from: PointMm = { x: 0, y: 0 };
  return path
    .map((command) => {
      switch (command[0]) {
        case 'Z':
          return 'h';
        case 'Q': {
          const [, x, y, endX, endY] = command;
          const first = twoThirds(from, { x, y });
          const second = twoThirds({ x: endX, y: endY }, { x, y });
          from = { x: endX, y: endY };
          return `${at(first)} ${at(second)} ${at(from)} c`;
        }
        case 'C': {
          const [, ...numbers] = command;
          from = { x: numbers[4], y: numbers[5] };
          return `${numbers.map(decimal).join(' ')} c`;
        }
        default:
          from = { x: command[1], y: command[2] };
          return `${at(from)} ${command[0] === 'M' ? 'm' : 'l'}`;
      }
    })
    .join(' ');
}

/** A quadratic curve as a cubic one, which is all that PDF knows: its control points lie two thirds of the way (derived). */
function twoThirds(end: PointMm, control: PointMm): PointMm {
  return { x: end.x + (2 / 3) * (control.x - end.x), y: end.y + (2 / 3) * (control.y - end.y) };
}

/**
 * 0…1 each. Inks: black takes over what the three colours share, so that black and gray marks are one ink and show no
 * coloured fringe where inks are out of register, and a mark of one ink stays one.
 * @see ISO 32000-1:2008, 10.3.4 (from DeviceRGB to DeviceCMYK, all black generated, all under-colour removed; from memory)
 */
function samplesOf({ r, g, b }: InkColour, model: 'rgb' | 'cmyk'): readonly number[] {
  const rgb = [r / 255, g / 255, b / 255];
  if (model === 'rgb') return rgb;
  const black = 1 - Math.max(...rgb);
  return [...rgb.map((light) => 1 - light - black), black];
}

function at({ x, y }: PointMm): string {
  return `${decimal(x)} ${decimal(y)}`;
}

/** To a millionth, without an exponent. */
function decimal(value: number): string {
  return String(Number(value.toFixed(6)));
}
