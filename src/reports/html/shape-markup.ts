import type { RectMm } from '../../geometry/rectangle.ts';
import type { Shape } from '../../geometry/shape.ts';
import { cornerRadiusOf } from '../../geometry/signed-distance.ts';
import { decimal } from './markup.ts';

/** The element of a shape in SVG, in mm; `attributes` go into it as they are. @see SVG 2, 10 (basic shapes) */
export function shapeMarkup(shape: Shape, attributes: string): string {
  const { box } = shape;
  switch (shape.kind) {
    case 'rect':
      return rectMarkup(box, 0, attributes);
    case 'rounded-rect':
      return rectMarkup(box, cornerRadiusOf(shape), attributes);
    case 'stadium':
      return rectMarkup(box, Math.min(box.width, box.height) / 2, attributes);
    case 'circle':
    case 'ellipse': {
      const [rx, ry] = [box.width / 2, box.height / 2];
      return `<ellipse cx="${decimal(box.x + rx)}" cy="${decimal(box.y + ry)}" rx="${decimal(rx)}" ry="${decimal(ry)}" ${attributes}/>`;
    }
    case 'polygon': {
      const points = shape.pointsMm.map(([x, y]) => `${decimal(box.x + x)},${decimal(box.y + y)}`);
      return `<polygon points="${points.join(' ')}" ${attributes}/>`;
    }
  }
}

export function rectMarkup(box: RectMm, radius: number, attributes: string): string {
  const corner = radius > 0 ? ` rx="${decimal(radius)}"` : '';
  return `<rect ${boxAttributes(box)}${corner} ${attributes}/>`;
}

export function boxAttributes({ x, y, width, height }: RectMm): string {
  return `x="${decimal(x)}" y="${decimal(y)}" width="${decimal(width)}" height="${decimal(height)}"`;
}
