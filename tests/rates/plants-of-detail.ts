import type { Raster } from '../../src/raster/raster.ts';
import { layOverlay } from '../overlaid-art.ts';
import { scaled, throughJpeg } from '../photo-like-art.ts';
import type { Plant } from './fault-case.ts';

/** With alpha, as the helpers of the tests want it; null where it is not RGB of 8 bits. */
function withAlpha(raster: Raster): Raster | null {
  if (raster.model !== 'rgb' || raster.depth !== 8) return null;
  if (raster.hasAlpha) return raster;
  const data = new Uint8Array((raster.data.length / 3) * 4);
  for (let from = 0, to = 0; from < raster.data.length; from += 3, to += 4) {
    data.set(raster.data.subarray(from, from + 3), to);
    data[to + 3] = 255;
  }
  return { ...raster, hasAlpha: true, data };
}

/** Over white, as a JPEG and most shops show it. */
function onWhite(raster: Raster): Raster {
  const data = raster.data.slice();
  for (let at = 0; at < data.length; at += 4) {
    const alpha = data[at + 3]! / 255;
    for (let k = 0; k < 3; k += 1) data[at + k] = Math.round(data[at + k]! * alpha + 255 * (1 - alpha));
    data[at + 3] = 255;
  }
  return { ...raster, data };
}

/** A sample that may be looked at and not used: on white, marks of gray or black over all of it, four to seven along it. */
const overlay: Plant = {
  name: 'half transparent marks, again and again',
  check: 'marked-preview',
  codes: ['repeated-overlay'],
  plant: (raster, next) => {
    const whole = withAlpha(raster);
    if (whole === null || Math.min(raster.widthPx, raster.heightPx) < 200) return null;
    return layOverlay(onWhite(whole), {
      stepPx: Math.max(raster.widthPx, raster.heightPx) / (4 + 3 * next()),
      turnDeg: -45 + 90 * next(),
      gray: next() < 0.5 ? 0 : 110,
      opacity: 0.2 + 0.3 * next(),
    });
  },
};

const KERNELS = ['nearest', 'linear', 'cubic', 'lanczos3'] as const;

/** A small download made large. */
const enlarged: Plant = {
  name: 'enlarged 2 to 4 times',
  check: 'true-detail',
  codes: ['below-stop', 'below-acceptable', 'below-good'],
  plant: (raster, next) => {
    const whole = withAlpha(raster);
    const factor = 2 + 2 * next();
    if (whole === null || Math.max(raster.widthPx, raster.heightPx) * factor > 4000) return null;
    return scaled(whole, factor, KERNELS[Math.floor(next() * KERNELS.length)]!);
  },
};

/** Saved again and again, until blocks show. */
const blocks: Plant = {
  name: 'a JPEG of quality 6 to 14',
  check: 'compression-blocks',
  codes: ['visible'],
  plant: (raster, next) => {
    const whole = withAlpha(raster);
    return whole && throughJpeg(onWhite(whole), 6 + Math.floor(9 * next()));
  },
};

/** The faults of detail that are put into real pictures, in turn, beside those of cut-outs. */
export const PLANTS_OF_DETAIL: readonly Plant[] = [overlay, enlarged, blocks];
