import { cropRaster } from '../../src/raster/crop.ts';
import { findExtents } from '../../src/raster/find-extents.ts';
import { padRaster } from '../../src/raster/pad.ts';
import { channelsOf, createRaster, type Raster } from '../../src/raster/raster.ts';
import type { Plant } from './fault-case.ts';

type Pixel = (samples: Raster['data'], at: number, x: number, y: number) => void;

/** A copy in which every pixel was visited; only for 8 bits of RGB with alpha, as nearly all cut-outs are. */
function repaint(raster: Raster, pixel: Pixel): Raster | null {
  if (raster.model !== 'rgb' || !raster.hasAlpha || raster.depth !== 8) return null;
  const data = raster.data.slice();
  for (let i = 0; i < raster.widthPx * raster.heightPx; i += 1)
    pixel(data, 4 * i, i % raster.widthPx, Math.floor(i / raster.widthPx));
  return { ...raster, data };
}

/** Share of the canvas that is clear. */
function shareClear(raster: Raster): number {
  if (!raster.hasAlpha) return 0;
  const channels = channelsOf(raster);
  let clear = 0;
  for (let at = channels - 1; at < raster.data.length; at += channels) if (raster.data[at] === 0) clear += 1;
  return clear / (raster.widthPx * raster.heightPx);
}

/** What a careless background removal leaves: an even trace of what was clear. */
const veil: Plant = {
  name: 'a veil of alpha 4 to 11',
  check: 'alpha-haze',
  codes: ['veil'],
  plant: (raster, next) => {
    if (shareClear(raster) < 0.2) return null;
    const alpha = 4 + Math.floor(8 * next());
    return repaint(raster, (data, at) => {
      if (data[at + 3] === 0) data.set([30, 30, 30, alpha], at);
    });
  },
};

/** A cut-out exported with its opacity a little down. */
const hollow: Plant = {
  name: 'an opacity of 96 to 98 %',
  check: 'hollow-alpha',
  codes: ['almost-opaque'],
  plant: (raster, next) => {
    const share = 0.96 + 0.02 * next();
    return repaint(raster, (data, at) => {
      data[at + 3] = Math.round(data[at + 3]! * share);
    });
  },
};

/** A speck as far from the design as a tenth of its canvas. */
const stray: Plant = {
  name: 'a speck beside the design',
  check: 'stray-pixels',
  codes: ['enlarges-box'],
  plant: (raster) => {
    const { widthPx, heightPx } = raster;
    const away = Math.ceil(Math.max(widthPx, heightPx) / 10);
    const side = Math.max(1, Math.round(widthPx / 200));
    if (!raster.hasAlpha || raster.depth !== 8 || raster.model !== 'rgb') return null;
    const grown = padRaster(raster, { widthPx: widthPx + away, heightPx, x: 0, y: 0 });
    return repaint(grown, (data, at, x, y) => {
      if (x >= widthPx + away - side && y < side) data.set([0, 0, 0, 255], at);
    });
  },
};

/** A cut-out saved on paper white instead of on nothing. */
const box: Plant = {
  name: 'a ground of 248',
  check: 'near-white-box',
  codes: ['near-white'],
  plant: (raster) => {
    if (shareClear(raster) < 0.3) return null;
    const whole = padRaster(raster, {
      widthPx: raster.widthPx + 20,
      heightPx: raster.heightPx + 20,
      x: 10,
      y: 10,
    });
    return repaint(whole, (data, at) => {
      const alpha = data[at + 3]! / 255;
      for (let k = 0; k < 3; k += 1) data[at + k] = Math.round(data[at + k]! * alpha + 248 * (1 - alpha));
      data[at + 3] = 255;
    });
  },
};

/** Exported from a canvas that was too low: the lower fifth to third of the art is missing. */
const cut: Plant = {
  name: 'the lower part cut off',
  check: 'cut-off-edge',
  codes: ['cut-shape', 'cut-glow'],
  plant: (raster, next) => {
    if (shareClear(raster) < 0.2) return null;
    const extents = findExtents(raster).contentBoxPx;
    if (extents === null) return null;
    const keep = Math.round(extents.height * (0.67 + 0.13 * next()));
    const height = extents.y + keep;
    const margin = Math.ceil(raster.widthPx / 20);
    const kept = cropRaster(raster, { x: 0, y: 0, width: raster.widthPx, height });
    return padRaster(kept, {
      widthPx: raster.widthPx + 2 * margin,
      heightPx: height + margin,
      x: margin,
      y: margin,
    });
  },
};

/** Cut out of white by hand: the soft edge keeps what it had, and a pixel more of it. */
const fringe: Plant = {
  name: 'cut out of white, with all of it left',
  check: 'edge-fringe',
  codes: ['fringe'],
  plant: (raster) =>
    shareClear(raster) < 0.2
      ? null
      : repaint(raster, (data, at) => {
          const alpha = data[at + 3]! / 255;
          for (let k = 0; k < 3; k += 1) data[at + k] = Math.round(data[at + k]! * alpha + 255 * (1 - alpha));
          data[at + 3] = Math.round(255 * Math.min(1, 1.5 * alpha));
        }),
};

/** A sample as shops show it: every third pixel. */
const preview: Plant = {
  name: 'reduced to 300 px',
  check: 'marked-preview',
  codes: ['preview-sized'],
  plant: (raster) => {
    const step = Math.ceil(Math.max(raster.widthPx, raster.heightPx) / 300);
    if (step < 2) return null;
    const small = createRaster({
      ...raster,
      widthPx: Math.floor(raster.widthPx / step),
      heightPx: Math.floor(raster.heightPx / step),
    });
    const channels = channelsOf(raster);
    for (let y = 0; y < small.heightPx; y += 1)
      for (let x = 0; x < small.widthPx; x += 1) {
        const from = (y * step * raster.widthPx + x * step) * channels;
        small.data.set(raster.data.subarray(from, from + channels), (y * small.widthPx + x) * channels);
      }
    return small;
  },
};

/** The faults that are put into real pictures, in turn. */
export const PLANTS: readonly Plant[] = [veil, hollow, stray, box, cut, fringe, preview];
