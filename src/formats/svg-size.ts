import { BlankcheckError } from '../blankcheck-error.ts';

/** Attributes of an element, by name as written. */
export type SvgAttributes = Readonly<Record<string, string>>;

/** In user units. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The canvas of a drawing in CSS pixels (96 an inch), and the user units it is divided into. */
export interface SvgSize {
  readonly widthPx: number;
  readonly heightPx: number;
  /** null when the drawing has none: then a user unit is a pixel. */
  readonly viewBox: ViewBox | null;
}

/** CSS pixels in a unit. @see CSS Values and Units Level 4, 6.2 (absolute lengths); em and ex at the default font size of 16 px */
const PX_PER_UNIT: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
  em: 16,
  rem: 16,
  ex: 8,
};

const LENGTH = /^([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)(%|[a-z]*)$/i;

/**
 * A length in CSS pixels; a percentage of `wholePx`. null when it is left out, `auto`, no length, or a percentage of
 * nothing.
 */
export function parseSvgLength(text = '', wholePx: number | null = null): number | null {
  const [, digits, unit = ''] = LENGTH.exec(text.trim()) ?? [];
  if (digits === undefined) return null;
  const perUnit = unit === '%' ? wholePx !== null && wholePx / 100 : PX_PER_UNIT[unit.toLowerCase()];
  return typeof perUnit === 'number' ? Number(digits) * perUnit : null;
}

/** The four numbers, when they span an area. */
export function parseViewBox(text = ''): ViewBox | null {
  const numbers = text
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x = 0, y = 0, width = 0, height = 0] = numbers;
  const spans = numbers.length === 4 && numbers.every(Number.isFinite) && isSane(width) && isSane(height);
  return spans ? { x, y, width, height } : null;
}

/**
 * Natural size of a drawing by the attributes of its root: width and height; a missing one or a percentage comes
 * from the view box (one length given keeps its proportions).
 * @throws `drawing-without-size` when neither says how large the drawing is
 * @see SVG 2, 8.2 to 8.6; CSS Images 3, 4 (default sizing)
 */
export function readSvgSize(root: SvgAttributes): SvgSize {
  const viewBox = parseViewBox(root.viewBox);
  const width = positive(parseSvgLength(root.width, viewBox?.width ?? null));
  const height = positive(parseSvgLength(root.height, viewBox?.height ?? null));
  if (width !== null && height !== null) return { widthPx: width, heightPx: height, viewBox };
  if (viewBox === null)
    throw new BlankcheckError(
      'drawing-without-size',
      'The drawing does not say how large it is: its svg element has neither a viewBox nor both width and height. Export it with a size, or as PNG.',
    );
  const scale = width !== null ? width / viewBox.width : height !== null ? height / viewBox.height : 1;
  return { widthPx: width ?? viewBox.width * scale, heightPx: height ?? viewBox.height * scale, viewBox };
}

function positive(length: number | null): number | null {
  return length !== null && isSane(length) ? length : null;
}

/** What lies outside is no drawing, and products of such numbers would leave the range of doubles. */
function isSane(length: number): boolean {
  return length >= 1e-6 && length <= 1e9;
}
