import type { Drawing, DrawnItem, InkColour } from '../geometry/drawing.ts';
import type { RectMm } from '../geometry/rectangle.ts';

/** SVG markup of a drawing: `windowMm` of it fills the canvas, whose width and height are written as they are given. */
export function drawingToSvg(
  drawing: Drawing,
  windowMm: RectMm,
  canvas: { readonly width: number | string; readonly height: number | string },
): string {
  const { x, y, width, height } = windowMm;
  const box = [x, y, width, height].map(decimal).join(' ');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${canvas.width}" height="${canvas.height}" viewBox="${box}" preserveAspectRatio="none">`,
    ...drawing.map(element),
    '</svg>',
  ].join('\n');
}

function element(item: DrawnItem): string {
  const colour = hex(item.colour);
  if (item.kind === 'path') {
    const commands = item.path.map(([letter, ...numbers]) => `${letter}${numbers.map(decimal).join(' ')}`);
    return `<path d="${commands.join('')}" fill="${colour}"/>`;
  }
  if (item.kind === 'rect') {
    const { x, y, width, height } = item.rectMm;
    return `<rect x="${decimal(x)}" y="${decimal(y)}" width="${decimal(width)}" height="${decimal(height)}" fill="${colour}"/>`;
  }
  const { from, to, widthMm, dashesMm } = item;
  const dashes = dashesMm ? ` stroke-dasharray="${dashesMm.map(decimal).join(' ')}"` : '';
  return `<line x1="${decimal(from.x)}" y1="${decimal(from.y)}" x2="${decimal(to.x)}" y2="${decimal(to.y)}" stroke="${colour}" stroke-width="${decimal(widthMm)}"${dashes}/>`;
}

/** To a millionth of a mm, without an exponent. */
function decimal(value: number): string {
  return String(Number(value.toFixed(6)));
}

function hex({ r, g, b }: InkColour): string {
  return `#${[r, g, b].map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
