import { channelsOf, createRaster, fullScaleOf, type Raster } from '../../src/raster/raster.ts';
import { paintRaster, type Rgba, seededNumbers } from '../pictures.ts';
import type { FaultCase, Plant } from './fault-case.ts';

/** Whether a mark of the overlay covers this place of its tile, both 0…1 across and down. */
type Mark = (u: number, v: number) => boolean;

/** Two words as bars of letters, a ring with a stroke, and a cross of hairlines: what samples are marked with. */
const MARKS: Readonly<Record<string, Mark>> = {
  lettering: (u, v) =>
    v > 0.4 &&
    v < 0.62 &&
    u > 0.1 &&
    u < 0.9 &&
    Math.floor(u * 30) % 3 !== 0 &&
    (v < 0.45 || v > 0.57 || Math.floor(u * 30) % 3 === 1),
  ring: (u, v) => Math.abs(Math.hypot(u - 0.5, v - 0.5) - 0.3) < 0.05 || Math.abs(u - v) < 0.03,
  cross: (u, v) => Math.abs(u - v) < 0.035 || Math.abs(1 - u - v) < 0.035,
};

interface Overlay {
  readonly mark: Mark;
  readonly tilePx: number;
  readonly turn: number;
  /** Of the mark over the art, 0…1. */
  readonly opacity: number;
  /** 255 white, 128 gray. */
  readonly code: number;
}

/** The art under a mark that is repeated over its whole canvas; alpha as it was, but for what was clear: that is marked too. */
export function layOverlay(raster: Raster, { mark, tilePx, turn, opacity, code }: Overlay): Raster {
  const laid = { ...raster, data: raster.data.slice() };
  const channels = channelsOf(raster);
  const colours = raster.hasAlpha ? channels - 1 : channels;
  const full = fullScaleOf(raster);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const part = (value: number) => value - Math.floor(value);
  for (let y = 0; y < raster.heightPx; y++)
    for (let x = 0; x < raster.widthPx; x++) {
      const [u, v] = [part((x * cos + y * sin) / tilePx), part((y * cos - x * sin) / tilePx)];
      if (!mark(u, v)) continue;
      const at = (y * raster.widthPx + x) * channels;
      const alpha = raster.hasAlpha ? laid.data[at + colours]! / full : 1;
      const together = opacity + alpha * (1 - opacity);
      for (let k = 0; k < colours; k++)
        laid.data[at + k] =
          (opacity * (code / 255) * full + alpha * (1 - opacity) * laid.data[at + k]!) / together;
      if (raster.hasAlpha) laid.data[at + colours] = together * full;
    }
  return laid;
}

/** A photo-like picture: soft patches of colour, sharp shapes over them and a grain. */
function paintScene(seed: number, widthPx = 640, heightPx = 480): Raster {
  const next = seededNumbers(seed);
  const waves = Array.from(
    { length: 6 },
    () => [next() * 0.02, next() * 0.02, next() * 6, 20 + next() * 30] as const,
  );
  const shapes = Array.from({ length: 18 }, () => ({
    x: next() * widthPx,
    y: next() * heightPx,
    r: 12 + next() * 70,
    flat: next() < 0.5,
    colour: [next() * 255, next() * 255, next() * 255] as const,
  }));
  const noise = seededNumbers(seed + 1000);
  return paintRaster(widthPx, heightPx, (x, y) => {
    const base = waves.map(([fx, fy, phase, height]) => height * Math.sin(x * fx + y * fy + phase));
    const grain = (noise() - 0.5) * 10;
    const light = 128 + base[0]! + base[1]!;
    let colour: readonly number[] = [light + base[2]!, light + base[3]!, light + base[4]!];
    for (const shape of shapes)
      if (Math.hypot(x - shape.x, y - shape.y) < shape.r)
        colour = shape.flat
          ? shape.colour
          : shape.colour.map((c) => c * (0.6 + (0.4 * (x - shape.x + shape.r)) / (2 * shape.r)));
    const [r, g, b] = colour.map((c) => Math.max(0, Math.min(255, c + grain)));
    return [r!, g!, b!, 255] as Rgba;
  });
}

const overlays: readonly FaultCase[] = Object.entries(MARKS).flatMap(([name, mark]) =>
  [0.1, 0.15, 0.25, 0.4].flatMap((opacity, i) =>
    [70, 110].map((tilePx, j) => ({
      name: `${name}, opacity ${opacity}, tile ${tilePx} px, ${i % 2 ? 'gray' : 'white'}`,
      code: 'overlay',
      fault: true,
      widthMm: 80,
      raster: () =>
        layOverlay(paintScene(10 * i + j), {
          mark,
          tilePx,
          turn: [0, 0.5, 0.785, 0.3][(i + j) % 4]!,
          opacity,
          code: i % 2 ? 128 : 255,
        }),
    })),
  ),
);

/** Repetitions that belong to the art. */
const PATTERNS: Readonly<Record<string, (x: number, y: number) => Rgba>> = {
  stripes: (x) => (Math.floor(x / 40) % 2 ? [200, 40, 40, 255] : [250, 250, 250, 255]),
  gingham: (x, y) => {
    const dark = (Math.floor(x / 50) % 2) + (Math.floor(y / 50) % 2);
    return [250 - 90 * dark, 250 - 90 * dark, 255, 255];
  },
  'polka dots': (x, y) =>
    Math.hypot((x % 80) - 40, (y % 80) - 40) < 22 ? [255, 255, 255, 255] : [40, 120, 90, 255],
  tiles: (x, y) => (x % 100 < 4 || y % 100 < 4 ? [230, 230, 230, 255] : [120, 150, 190, 255]),
  knitting: (x, y) => {
    const v = (y + Math.abs((x % 32) - 16)) % 24;
    return [160 + 3 * v, 60 + 2 * v, 60, 255];
  },
};

const clean: readonly FaultCase[] = [
  ...Object.entries(PATTERNS).flatMap(([name, paint]) => [
    {
      name: `clean: ${name}`,
      code: 'overlay',
      fault: false,
      widthMm: 80,
      raster: () => paintRaster(640, 480, paint),
    },
    {
      name: `clean: ${name} behind a subject`,
      code: 'overlay',
      fault: false,
      widthMm: 80,
      raster: () => {
        const scene = paintScene(77);
        return paintRaster(640, 480, (x, y) =>
          Math.hypot((x - 320) / 1.3, y - 240) < 175
            ? (Array.from(scene.data.subarray((y * 640 + x) * 4, (y * 640 + x) * 4 + 4)) as unknown as Rgba)
            : paint(x, y),
        );
      },
    },
  ]),
  ...Array.from({ length: 14 }, (_, seed) => ({
    name: `clean: scene ${seed}`,
    code: 'overlay',
    fault: false,
    widthMm: 80,
    raster: () => paintScene(200 + seed),
  })),
];

const sizes: readonly FaultCase[] = [640, 998, 999, 1000, 1001, 1600].map((side) => ({
  name: `${side} px on the longer side`,
  code: 'preview-sized',
  fault: side < 1000,
  widthMm: 60,
  raster: () => {
    const raster = createRaster({ widthPx: 40, heightPx: side, model: 'rgb', hasAlpha: true, depth: 8 });
    raster.data.fill(120);
    return raster;
  },
}));

export const MARKED_PREVIEW_CASES: readonly FaultCase[] = [...sizes, ...overlays, ...clean];

export const MARKED_PREVIEW_PLANTS: readonly Plant[] = [
  {
    name: 'a mark repeated all over',
    check: 'marked-preview',
    codes: ['overlay'],
    plant: (raster, next) => {
      const longer = Math.max(raster.widthPx, raster.heightPx);
      if (Math.min(raster.widthPx, raster.heightPx) < 200) return null;
      const names = Object.keys(MARKS);
      return layOverlay(raster, {
        mark: MARKS[names[Math.floor(next() * names.length)]!]!,
        tilePx: longer * (0.1 + next() * 0.12),
        turn: next() * 0.8,
        opacity: 0.15 + next() * 0.3,
        code: next() < 0.5 ? 255 : 128,
      });
    },
  },
];
