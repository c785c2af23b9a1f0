import { type Background, BlankcheckError } from '../src/index.ts';

/**
 * The padding's colour from a CSS colour or `transparent`, as 8-bit sRGB; colours beyond sRGB are brought to its rim.
 * @throws BlankcheckError `bad-colour` for anything else, and for a colour that is half transparent.
 */
export async function parseBackground(text: string): Promise<Background> {
  const [r, g, b, alpha] = (await parseClassic(text.trim())) ?? (await parseModern(text.trim())) ?? [];
  if (r === undefined || g === undefined || b === undefined || alpha === undefined) throw notAColour(text);
  if (alpha === 0) return { r: 0, g: 0, b: 0, alpha: 0 };
  if (alpha < 1) {
    throw new BlankcheckError(
      'bad-colour',
      `The colour "${text}" for --background is half transparent, and a printer cannot print half a background.\n` +
        'Give it without its alpha, or give transparent.',
    );
  }
  return { r, g, b, alpha: 1 };
}

type Rgba = readonly [number, number, number, number];

/** Names, hex, rgb(), hsl() and hwb(): CSS Color 3 and the like. */
async function parseClassic(text: string): Promise<Rgba | null> {
  const { default: Color } = await import('color');
  try {
    const colour = new Color(text);
    const [r, g, b] = colour.rgb().round().array() as [number, number, number];
    return allFinite([r, g, b, colour.alpha()]);
  } catch {
    return null;
  }
}

/** lab(), lch(), oklab(), oklch() and color(): CSS Color 4, with chroma reduced where sRGB ends. */
async function parseModern(text: string): Promise<Rgba | null> {
  const { clampChroma, converter, parse } = await import('culori');
  const parsed = parse(text);
  if (!parsed) return null;
  const { r, g, b } = converter('rgb')(clampChroma(parsed, 'oklch'));
  return allFinite([
    ...[r, g, b].map((value) => Math.round(Math.min(1, Math.max(0, value)) * 255)),
    parsed.alpha ?? 1,
  ]);
}

function allFinite(values: readonly number[]): Rgba | null {
  return values.length === 4 && values.every(Number.isFinite) ? (values as unknown as Rgba) : null;
}

function notAColour(text: string): BlankcheckError {
  return new BlankcheckError(
    'bad-colour',
    `Expected a CSS colour or transparent for --background, received "${text}".\n` +
      'Such as white, #fff8e7, rgb(255, 248, 231) or hsl(43, 100%, 95%).',
  );
}
