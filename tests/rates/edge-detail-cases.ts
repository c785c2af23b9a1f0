import type { BlankRecord } from '../../src/catalogue/records.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { PLATE } from '../checks/jobs.ts';
import { paintLeaves } from '../leafy-art.ts';
import { paintPhoto, scaled } from '../photo-like-art.ts';
import { paintRaster, seededNumbers } from '../pictures.ts';
import { drawOnPlate, grayOf, type Mark, paintRim, RIM_ART_MM } from '../rim-art.ts';
import type { FaultCase } from './fault-case.ts';

/** The plate of the tests with a bevel of 2 mm, and with a hole of 4 mm whose middle lies 12 mm below the upper edge. */
const BEVELLED: BlankRecord = { ...PLATE, bevelMm: 2 };
const HOLED: BlankRecord = {
  ...PLATE,
  holes: [{ use: 'hang', shape: 'circle', diameterMm: 4, xMm: 50, yMm: 12 }],
};

type Code = 'near-edge' | 'on-bevel' | 'at-hole';

const made = (
  code: Code,
  name: string,
  fault: boolean,
  raster: () => Raster | Promise<Raster>,
  blank?: BlankRecord,
): FaultCase => ({ code, name, fault, raster, widthMm: RIM_ART_MM, ...(blank ? { blank } : {}) });

const MARKS: readonly Pick<Mark, 'what' | 'sizeMm'>[] = [
  ...[2.5, 4, 8, 14].map((sizeMm) => ({ what: 'text', sizeMm }) as const),
  ...[6, 9, 16, 24].map((sizeMm) => ({ what: 'face', sizeMm }) as const),
  ...[4, 8, 16].map((sizeMm) => ({ what: 'emblem', sizeMm }) as const),
];
const SIDES = ['bottom', 'left', 'top', 'right'] as const;

const WAVES = Array.from(
  { length: 9 },
  (_, i) => `<circle cx="${12 * i}" cy="${30 + 9 * (i % 4)}" r="30" fill="url(#g)"/>`,
);
const GROUNDS = {
  plain: '',
  gradient:
    '<linearGradient id="g" x2="0" y2="1"><stop stop-color="#eee"/><stop offset="1" stop-color="#bbb"/></linearGradient><rect x="-3" y="-3" width="106" height="106" fill="url(#g)"/>',
  clouds: `<radialGradient id="g"><stop stop-color="#f0f0f0"/><stop offset="1" stop-color="#f0f0f0" stop-opacity="0"/></radialGradient>${WAVES.join('')}`,
} as const;

/** Gaps across the safe line at 5 mm. */
const RING = MARKS.flatMap((mark, i) =>
  [0.3, 1, 2, 3, 4, 4.5, 5, 5.3, 6, 8, 12].map((gapMm, j) => {
    const side = SIDES[(i + j) % 4]!;
    return made('near-edge', `${mark.what} of ${mark.sizeMm} mm, ${gapMm} mm from the edge`, gapMm < 5, () =>
      paintRim([{ ...mark, gapMm, side, alongMm: i - 5 }]),
    );
  }),
);

/** Contrast across the limit of 25 L*, dark on light and light on dark. */
const STRENGTH = (['text', 'face', 'emblem'] as const).flatMap((what) =>
  [5, 12, 20, 30, 45, 70].flatMap((contrast) =>
    (
      [
        [85, -1],
        [20, 1],
      ] as const
    ).map(([ground, sign]) =>
      made(
        'near-edge',
        `${what} of ${contrast} L* on a ground of L* ${ground}, 2 mm from the edge`,
        contrast > 25,
        () =>
          paintRim([{ what, sizeMm: 6, gapMm: 2 }], {
            ink: grayOf(Math.min(100, ground + sign * contrast)),
            ground: grayOf(ground),
          }),
      ),
    ),
  ),
);

const ON_GROUNDS = Object.entries(GROUNDS).flatMap(([name, under]) => [
  made('near-edge', `${name} alone`, false, () => paintRim([], { under })),
  ...[1.5, 3.5, 5.5].map((gapMm) =>
    made('near-edge', `text and emblem on ${name}, ${gapMm} mm from the edge`, gapMm < 5, () =>
      paintRim(
        [
          { what: 'text', sizeMm: 5, gapMm },
          { what: 'emblem', sizeMm: 9, gapMm, side: 'right' },
        ],
        { under },
      ),
    ),
  ),
]);

/** Words of which the edge takes the end. */
const CUT = [38, 42, 46, 50].flatMap((alongMm) =>
  [3, 5].map((sizeMm) =>
    made('near-edge', `words of ${sizeMm} mm cut by the edge, ${alongMm} mm off the middle`, true, () =>
      paintRim([{ what: 'text', text: 'Community plant sale', sizeMm, gapMm: 30, alongMm }]),
    ),
  ),
);

const BEVEL = MARKS.filter(({ sizeMm }) => sizeMm <= 9).flatMap((mark) =>
  [0.3, 1, 1.4, 2, 2.5, 4, 6].map((gapMm) =>
    made(
      'on-bevel',
      `${mark.what} of ${mark.sizeMm} mm, ${gapMm} mm from the edge`,
      gapMm < 2,
      () => paintRim([{ ...mark, gapMm }]),
      BEVELLED,
    ),
  ),
);

/** Below the hole, from 2 mm above its lower rim to 6 mm below it; 3 mm are kept out. */
const HOLE = MARKS.filter(({ sizeMm }) => sizeMm <= 16).flatMap((mark) =>
  [-2, 0, 1, 2, 2.5, 3, 3.5, 6].map((below) =>
    made(
      'at-hole',
      `${mark.what} of ${mark.sizeMm} mm, ${below} mm below the hole`,
      below < 3,
      () => paintRim([{ ...mark, gapMm: 14 + below, side: 'top' }]),
      HOLED,
    ),
  ),
);

const DARK = '#333';
const dots = (step: number, radius: number) =>
  Array.from({ length: Math.ceil(112 / step) ** 2 }, (_, i) => {
    const across = Math.ceil(112 / step);
    return `<circle cx="${(i % across) * step - 3}" cy="${Math.floor(i / across) * step - 3}" r="${radius}" fill="${DARK}"/>`;
  }).join('');
const frame = (at: number, width: number) =>
  `<rect x="${at + width / 2}" y="${at + width / 2}" width="${100 - 2 * at - width}" height="${100 - 2 * at - width}" fill="none" stroke="${DARK}" stroke-width="${width}"/>`;

const DRAWN: Readonly<Record<string, string>> = {
  'a frame of 0.5 mm': frame(2, 0.5),
  'a frame of 1 mm': frame(2, 1),
  'a frame of 3 mm': frame(1, 3),
  'a ring of 2 mm': `<circle cx="50" cy="50" r="47" fill="none" stroke="${DARK}" stroke-width="2"/>`,
  'a dark panel from 3 mm on': `<rect x="3" y="3" width="94" height="60" fill="${DARK}"/>`,
  'a slanting horizon': `<path d="M-3 20L103 70V103H-3Z" fill="${DARK}"/>`,
  'a stem that runs off': `<path d="M40 103Q48 60 50 50" stroke="${DARK}" stroke-width="2" fill="none"/>`,
  'three stems that run off': `<path d="M30 103Q48 60 50 50M50 103V50M70 103Q55 70 50 50" stroke="${DARK}" stroke-width="1.5" fill="none"/>`,
  'petals that run off': `<g fill="${DARK}"><ellipse cx="98" cy="20" rx="20" ry="6"/><ellipse cx="96" cy="45" rx="22" ry="7" transform="rotate(20 96 45)"/><ellipse cx="90" cy="98" rx="6" ry="20"/></g>`,
  'a hill that runs off': `<ellipse cx="50" cy="105" rx="70" ry="40" fill="${DARK}"/>`,
  'stripes of 4 mm': Array.from(
    { length: 14 },
    (_, i) => `<rect x="-3" y="${8 * i - 3}" width="106" height="4" fill="${DARK}"/>`,
  ).join(''),
  'dots of 2 mm, 6 mm apart': dots(6, 1),
  'dots of 4 mm, 10 mm apart': dots(10, 2),
  'dots of 8 mm, 16 mm apart': dots(16, 4),
};

const grain = (amplitude: number, sizePx: number) => () => {
  const next = seededNumbers(3);
  const across = Math.ceil(636 / sizePx);
  const codes = Float64Array.from({ length: across * across }, () => 128 + amplitude * (next() - 0.5));
  return paintRaster(636, 636, (x, y) => {
    const code = codes[Math.floor(y / sizePx) * across + Math.floor(x / sizePx)]!;
    return [code, code, code, 255];
  });
};

const BUSY = [
  ...[60, 90, 130, 180, 250].flatMap((amplitude) =>
    [1, 3, 8, 20].map((sizePx) =>
      made(
        'near-edge',
        `a grain of ${amplitude} in squares of ${sizePx} px`,
        false,
        grain(amplitude, sizePx),
      ),
    ),
  ),
  ...[1, 2, 4].map((times) =>
    made('near-edge', `leaves all over, ${times} x`, false, async () =>
      square(await scaled(paintLeaves(), times, 'cubic')),
    ),
  ),
  ...(['clouds', 'things', 'meadow'] as const).map((scene) =>
    made('near-edge', `a photo of ${scene}`, false, () => square(paintPhoto(scene))),
  ),
  ...Object.entries(DRAWN).map(([name, svg]) => made('near-edge', name, false, () => drawOnPlate(svg))),
];

/** The middle of a picture, so that it covers the plate. */
function square(raster: Raster): Raster {
  const side = Math.min(raster.widthPx, raster.heightPx);
  const left = Math.floor((raster.widthPx - side) / 2);
  return paintRaster(side, side, (x, y) => {
    const at = 4 * (y * raster.widthPx + x + left);
    return [raster.data[at]!, raster.data[at + 1]!, raster.data[at + 2]!, 255];
  });
}

export const EDGE_DETAIL_CASES: readonly FaultCase[] = [
  ...RING,
  ...STRENGTH,
  ...ON_GROUNDS,
  ...CUT,
  ...BEVEL,
  ...HOLE,
  ...BUSY,
];
