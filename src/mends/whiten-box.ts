import { practiceLimit } from '../catalogue/practice.ts';
import { measureBoxStep } from '../faults/box-step.ts';
import { findFlatBox } from '../faults/flat-box.ts';
import { pixelAreaOf } from '../job/pixel-area.ts';
import { channelsOf, fullScaleOf } from '../raster/raster.ts';
import type { MendDefinition } from './define-mend.ts';

const AREA = practiceLimit('flat-box-area').value;

export default {
  id: 'whiten-box',
  title: 'Make a nearly white box pure white',
  reason:
    'Makes the nearly white ground that the check finds pure white, so that a white blank shows no rectangle. Only the ground that hangs together with the rim; the subject, and what it encloses, keep every pixel.',
  source: ['the limits of the check of boxes'],
  answers: ['near-white-box/near-white'],
  gentle: true,
  apply: (raster, { job, source }) => {
    const placed = job();
    if (placed === null) return { raster };
    const { contentBoxPx, blank } = placed;
    const box = findFlatBox(raster, contentBoxPx, (colour) => {
      const { visible, nearWhite } = measureBoxStep(colour, source, blank.baseColour);
      return visible && nearWhite;
    });
    if (box === null || box.pixels * pixelAreaOf(placed) < AREA - 1e-6) return { raster };
    const data = raster.data.slice();
    const step = channelsOf(raster);
    const full = fullScaleOf(raster);
    const { x, y, width } = box.boxPx;
    for (let at = box.mask.indexOf(1); at !== -1; at = box.mask.indexOf(1, at + 1)) {
      const pixel = ((y + Math.floor(at / width)) * raster.widthPx + x + (at % width)) * step;
      // Alpha stays: white over a white base prints nothing.
      const colours = raster.hasAlpha ? step - 1 : step;
      data.fill(full, pixel, pixel + colours);
    }
    return { raster: { ...raster, data } };
  },
} satisfies MendDefinition;
