import { type FlatBox, GROUND_TOLERANCE } from '../faults/flat-box.ts';
import { addAlpha } from '../raster/add-alpha.ts';
import { channelsOf, fullScaleOf, type Raster } from '../raster/raster.ts';
import { mendBoxes } from './box-at-fault.ts';
import type { MendDefinition } from './define-mend.ts';

/** The channels of a shadow keep the proportions of the ground to so many of 255: JPEG noise stays within (own choice). */
const NOISE = 8;
/** From pixel to pixel a shadow changes by no more of 255; a subject begins with a larger step (own choice). */
const STEP = 16;
/** A shadow that takes away more of the ground is a subject (own choice). */
const MOST = 0.85;

export default {
  id: 'free-shadow',
  title: 'Free a soft shadow from its flat box',
  reason:
    'Where the check finds a flat box: makes the ground clear, and what shades it softly black of partial alpha, so that the shadow falls on the blank and no box is left. What begins with a sharp step, or has a colour of its own, is the subject and stays; it keeps a trace of the ground in its soft rim.',
  source: [
    'black over a ground: ground x (1 - alpha) in the samples (the "source over" rule, Porter and Duff 1984, from memory)',
    'the limits of the check of boxes',
  ],
  answers: ['near-white-box/near-white', 'near-white-box/flat-box'],
  gentle: false,
  apply: (raster, context) => ({ raster: mendBoxes(raster, context, freeShadow) }),
} satisfies MendDefinition;

function freeShadow(raster: Raster, box: FlatBox): Raster {
  const opened = addAlpha(raster);
  const data = opened.data.slice();
  const channels = channelsOf(opened);
  const full = fullScaleOf(opened);
  const { boxPx, mask, colour } = box;
  // So much is taken for noise of the ground; what is denser begins at nothing, or the shadow would end in a step.
  const noise = GROUND_TOLERANCE / (255 * Math.max(...colour));
  const shade = shadeFinder(opened, box);
  const { alphas, isShaded } = spread(box, shade);
  for (let pixel = 0; pixel < mask.length; pixel += 1) {
    if (isShaded[pixel] === 0) continue;
    const row = boxPx.y + Math.floor(pixel / boxPx.width);
    const at = (row * raster.widthPx + boxPx.x + (pixel % boxPx.width)) * channels;
    data.fill(0, at, at + channels);
    data[at + channels - 1] = Math.round(Math.max(0, (alphas[pixel]! - noise) / (1 - noise)) * full);
  }
  return { ...opened, data };
}

/** The alpha of black that makes a pixel of the box from its ground, 0…1; NaN where black alone cannot. */
function shadeFinder(raster: Raster, { boxPx, colour }: FlatBox): (pixel: number) => number {
  const channels = channelsOf(raster);
  const full = fullScaleOf(raster);
  const colours = channels - 1;
  return (pixel) => {
    const row = boxPx.y + Math.floor(pixel / boxPx.width);
    const at = (row * raster.widthPx + boxPx.x + (pixel % boxPx.width)) * channels;
    if (raster.data[at + colours] !== full) return Number.NaN;
    let [least, most, sum] = [Infinity, -Infinity, 0];
    for (let k = 0; k < colours; k += 1) {
      const left = raster.data[at + k]! / full / Math.max(colour[k]!, 1 / 255);
      [least, most, sum] = [Math.min(least, left), Math.max(most, left), sum + left];
    }
    const alpha = 1 - sum / colours;
    return (most - least) * 255 > NOISE || alpha > MOST ? Number.NaN : Math.max(0, alpha);
  };
}

/** From the ground over neighbours across and down that go on softly. */
function spread({ boxPx: { width }, mask }: FlatBox, shade: (pixel: number) => number) {
  const alphas = new Float32Array(mask.length);
  const isShaded = mask.slice();
  const open: number[] = [];
  for (let at = mask.indexOf(1); at !== -1; at = mask.indexOf(1, at + 1)) open.push(at);
  const visit = (pixel: number, from: number) => {
    if (isShaded[pixel] === 1) return;
    const alpha = shade(pixel);
    if (Number.isNaN(alpha) || Math.abs(alpha - alphas[from]!) * 255 > STEP) return;
    isShaded[pixel] = 1;
    alphas[pixel] = alpha;
    open.push(pixel);
  };
  for (let pixel = open.pop(); pixel !== undefined; pixel = open.pop()) {
    const x = pixel % width;
    if (x > 0) visit(pixel - 1, pixel);
    if (x < width - 1) visit(pixel + 1, pixel);
    if (pixel >= width) visit(pixel - width, pixel);
    if (pixel < mask.length - width) visit(pixel + width, pixel);
  }
  return { alphas, isShaded };
}
