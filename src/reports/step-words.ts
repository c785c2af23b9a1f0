import { formatMillimetres } from '../geometry/length.ts';
import type { Intent } from '../icc/profile.ts';
import type { Background, Step } from '../prepare/step.ts';

/** A plan in one line: `trim, scale, place, fill, mirror`. */
export function tellPlan(steps: readonly Step[]): string {
  return steps
    .map((step) => (step.step === 'mend' ? `mend (${step.mend})` : SHORT_WORDS[step.step]))
    .join(', ');
}

const SHORT_WORDS = {
  crop: 'trim',
  turn: 'turn',
  resize: 'scale',
  convert: 'convert to sRGB',
  pad: 'place',
  cut: 'cut at the bleed line',
  bend: 'bend',
  flatten: 'fill the background',
  'convert-for-printer': 'convert for the printer',
  mirror: 'mirror',
} as const satisfies Record<Exclude<Step['step'], 'mend'>, string>;

const INTENT_WORDS: Readonly<Record<Intent, string>> = {
  perceptual: 'perceptual',
  relative: 'relative colorimetric',
  saturation: 'saturation',
  absolute: 'absolute colorimetric',
};

/** One step of a plan as an instruction, with its numbers. */
export function tellStep(step: Step): string {
  switch (step.step) {
    case 'mend':
      return `Mend: ${step.mend}.`;
    case 'crop':
      return `Trim to ${pixels(step.rectPx.width, step.rectPx.height)}, ${step.rectPx.x} px from the left and ${step.rectPx.y} px from the top.`;
    case 'turn':
      return `Turn ${step.degrees} degrees clockwise.`;
    case 'resize':
      return `Scale to ${pixels(step.widthPx, step.heightPx)}.`;
    case 'convert':
      return `Convert the colours from "${step.from}" to sRGB.`;
    case 'pad':
      return `Place on a canvas of ${pixels(step.widthPx, step.heightPx)}, ${step.x} px from its left and ${step.y} px from its top${step.x < 0 || step.y < 0 ? '; what hangs over is cut' : ''}${step.copiesX ? `; and again ${step.copiesX.join(', ')} px from its left` : ''}.`;
    case 'cut':
      return `Clear all that lies more than ${formatMillimetres(step.bleedMm)} outside the edge of the blank.`;
    case 'bend':
      return `Bend the canvas into an arc of ${degrees(step.angleDeg)}, with radii of ${formatMillimetres(step.outerRadiusMm)} and ${formatMillimetres(step.innerRadiusMm)}, on ${pixels(step.widthPx, step.heightPx)}.`;
    case 'flatten':
      return tellBackground(step.background);
    case 'convert-for-printer':
      return `Convert the colours for the printer by "${step.profile}" (${step.space.toUpperCase()}), ${INTENT_WORDS[step.intent]}${step.blackPointCompensation ? ' with black point compensation' : ''}.`;
    case 'mirror':
      return 'Mirror the whole canvas left to right.';
  }
}

function tellBackground({ r, g, b, alpha }: Background): string {
  if (alpha === 0) return 'Leave the background clear.';
  const white = r === 255 && g === 255 && b === 255;
  return `Fill the background with ${white ? 'white' : `rgb(${r}, ${g}, ${b})`}.`;
}

function degrees(angle: number): string {
  return `${Number(angle.toFixed(3))} degrees`;
}

function pixels(width: number, height: number): string {
  return `${width} x ${height} px`;
}
