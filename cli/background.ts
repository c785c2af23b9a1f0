import { type Background, BlankcheckError } from '../src/index.ts';

/**
 * The padding's colour from a CSS colour (a name, hex, rgb(), hsl(), hwb()) or `transparent`, as 8-bit sRGB.
 * @throws BlankcheckError `bad-colour` for anything else, and for a colour that is half transparent.
 */
export async function parseBackground(text: string): Promise<Background> {
  const { default: Color } = await import('color');
  let colour: InstanceType<typeof Color>;
  try {
    colour = new Color(text.trim());
  } catch {
    throw notAColour(text);
  }
  const [r = Number.NaN, g = Number.NaN, b = Number.NaN] = colour.rgb().round().array();
  const alpha = colour.alpha();
  if (![r, g, b, alpha].every(Number.isFinite)) throw notAColour(text);
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

function notAColour(text: string): BlankcheckError {
  return new BlankcheckError(
    'bad-colour',
    `Expected a CSS colour or transparent for --background, received "${text}".\n` +
      'Such as white, #fff8e7, rgb(255, 248, 231) or hsl(43, 100%, 95%).',
  );
}
