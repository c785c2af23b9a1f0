import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { defaultFamily, familyOf, listBlanks } from '../../src/catalogue/catalogue.ts';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { frameOf } from '../../src/job/art-frame.ts';
import { blankFromSize } from '../../src/job/blank-from-size.ts';
import type { JobRequest } from '../../src/job/job-request.ts';
import { marginWithinSafe } from '../../src/job/lines.ts';
import { placeArt } from '../../src/job/place-art.ts';
import { resolveBlank } from '../../src/job/resolve-blank.ts';
import { surveyRaster } from '../../src/raster/survey-raster.ts';
import { blankOf } from '../checks/jobs.ts';
import { CLEAR, GREEN, paintRaster, seededNumbers } from '../pictures.ts';

const codeOf = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof BlankcheckError) return error.code;
    throw error;
  }
  return 'none';
};

const corners = (width: number, height: number) => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
];
const place = (request: JobRequest, width = 400, height = 300) =>
  placeArt(
    request,
    resolveBlank(request, familyOf(request.blank)),
    { x: 0, y: 0, width, height },
    corners(width, height),
  );

describe('resolveBlank', () => {
  const tile = blankOf('tile-ceramic-8in');

  it('limits name where they come from: blank, family, option', () => {
    const blank = resolveBlank({ blank: tile, bleedMm: 4 }, familyOf(tile));
    expect(blank.bleed).toEqual({ value: 4, from: 'option:--bleed' });
    expect(blank.safe).toEqual({ value: 5, from: 'blank:tile-ceramic-8in' });
    expect(blank.resolution.good).toEqual({ value: 300, from: 'family:ceramic-tile' });
  });

  it('a blank given as a size: bleed 3, safe 5, first surface, 300/220/150', () => {
    const blank = resolveBlank({ blank: blankFromSize('8x10in') }, defaultFamily);
    expect(blank.outline).toEqual({ kind: 'rect', box: { x: 0, y: 0, width: 203.2, height: 254 } });
    expect([blank.bleed.value, blank.safe.value, blank.surface]).toEqual([3, 5, 'first']);
    expect([
      blank.resolution.good.value,
      blank.resolution.acceptable.value,
      blank.resolution.stopBelow.value,
    ]).toEqual([300, 220, 150]);
  });

  it.each([
    ['200x200mm', '200x200mm', 'rect'],
    ['round:95mm', 'round-95mm', 'circle'],
    ['8"x10"', '8inx10in', 'rect'],
  ])('%s has the id %s', (text, id, shape) => {
    const record = blankFromSize(text);
    expect([record.id, record.outline!.shape]).toEqual([id, shape]);
  });

  it('--measured replaces the outline; holes scale in place, not in size; radii and insets stay', () => {
    const tag = blankOf('luggage-tag-frp');
    const measured = { kind: 'rect' as const, widthMm: 69.85 * 0.98, heightMm: 107.95 };
    const blank = resolveBlank({ blank: tag, measured }, familyOf(tag));
    expect(blank.outline).toMatchObject({
      kind: 'rounded-rect',
      cornerRadiusMm: 6,
      box: { width: expect.closeTo(68.453, 9), height: 107.95 },
    });
    const { box } = blank.holes[0]!.shape;
    expect(box.x + box.width / 2).toBeCloseTo(34.93 * 0.98, 9);
    expect([box.width, box.height]).toEqual([16, 5]);
    const slate = blankOf('slate-rect-15x20cm');
    const smaller = resolveBlank(
      { blank: slate, measured: { kind: 'rect', widthMm: 148, heightMm: 199 } },
      familyOf(slate),
    );
    expect(smaller.edge.box).toEqual({ x: 5, y: 5, width: 138, height: 189 });
    expect(smaller.safe.value).toBe(10);
  });

  it('a round measure on a blank with sides, a rim larger than the piece, a wrap', () => {
    const round = { kind: 'round' as const, widthMm: 96, heightMm: 96 };
    expect(codeOf(() => resolveBlank({ blank: tile, measured: round }, defaultFamily))).toBe(
      'measured-does-not-fit',
    );
    const cushion = blankOf('cushion-16in');
    expect(
      codeOf(() =>
        resolveBlank(
          { blank: cushion, measured: { kind: 'rect', widthMm: 20, heightMm: 20 } },
          defaultFamily,
        ),
      ),
    ).toBe('measured-does-not-fit');
    expect(codeOf(() => resolveBlank({ blank: blankOf('mug-11oz'), measured: round }, defaultFamily))).toBe(
      'measured-does-not-fit',
    );
  });

  // Worked by hand: pi x 82 - 41.7 = 215.911, pi x 74 + 3 = 235.478 (common practice, no source: 8.5 in; 235.5 mm).
  it.each([
    ['mug-11oz', Math.PI * 82 - 41.7, 88.9],
    ['tumbler-20oz-straight', Math.PI * 74 + 3, 208.3],
    ['bottle-waisted-17oz', 190.5, 88.9],
  ])('the flat paper of %s is %d x %d mm', (id, width, height) => {
    const blank = resolveBlank({ blank: blankOf(id) }, familyOf(blankOf(id)));
    expect(blank.outline.box.width).toBeCloseTo(width, 9);
    expect(blank.outline.box.height).toBeCloseTo(height, 9);
  });

  it('every blank of the catalogue resolves', () => {
    for (const blank of listBlanks())
      expect(codeOf(() => resolveBlank({ blank }, familyOf(blank)))).toBe('none');
  });
});

describe('placeArt', () => {
  const tile = blankOf('tile-ceramic-8in');

  it('7 in wide on 200 mm: 11.1 mm on each side, proportions kept', () => {
    const { placementMm, effectivePpi } = place({ blank: tile, widthMm: 177.8 }, 2100, 1050);
    expect(placementMm).toEqual({
      x: expect.closeTo(11.1, 9),
      y: expect.closeTo(55.55, 9),
      width: expect.closeTo(177.8, 9),
      height: expect.closeTo(88.9, 9),
    });
    expect(effectivePpi).toEqual({ x: expect.closeTo(300, 9), y: expect.closeTo(300, 9) });
  });

  it('both sizes may stretch; the offset moves right and down; the ppi stay those of the axes', () => {
    const job = place({ blank: tile, widthMm: 100, heightMm: 50, offsetMm: { x: 2, y: -1 } }, 400, 400);
    expect(job.placementMm).toEqual({ x: 52, y: 74, width: 100, height: 50 });
    expect(job.effectivePpi.y / job.effectivePpi.x).toBeCloseTo(2, 12);
  });

  it('inside: a rectangle on a rounded tile is limited by its longer side', () => {
    const { placementMm } = place({ blank: tile });
    expect(placementMm.width).toBeCloseTo(190, 9);
    expect(placementMm.height).toBeCloseTo(142.5, 9);
  });

  it('cover: the box fills the edge and its bleed, the longer side hangs over', () => {
    const { placementMm } = place({ blank: tile, fit: 'cover' });
    expect(placementMm.height).toBeCloseTo(206, 9);
    expect(placementMm.width).toBeCloseTo((206 * 4) / 3, 9);
  });

  it('a turn of 90 degrees swaps the axes of the blank, not those of the artwork', () => {
    const job = place({ blank: tile, turn: 90, widthMm: 90 }, 400, 300);
    expect(job.placementMm.height).toBeCloseTo(120, 9);
    expect(job.contentBoxPx).toMatchObject({ width: 400, height: 300 });
    // The artwork's top left corner, turned clockwise, lies at the top right.
    const frame = frameOf(job);
    const corner = frame.toMm({ x: 0, y: 0 });
    expect(corner.x).toBeCloseTo(100 + 45, 9);
    expect(corner.y).toBeCloseTo(100 - 60, 9);
    expect(frame.toPx(corner).x).toBeCloseTo(0, 9);
  });

  it('on a whole wrap only rim and foot are safe lines', () => {
    const tumbler = blankOf('tumbler-20oz-straight');
    const { placementMm } = place({ blank: tumbler }, 2000, 1000);
    expect(placementMm.x).toBeCloseTo(0, 9);
    const tall = place({ blank: tumbler }, 1000, 2000);
    expect(tall.placementMm.y).toBeCloseTo(6, 9);
  });

  it('the middle of a smaller printable area is that of the edge', () => {
    const slate = blankOf('slate-rect-15x20cm');
    const { placementMm } = place({ blank: slate, widthMm: 60 }, 100, 100);
    expect([placementMm.x, placementMm.y]).toEqual([45, 70]);
  });

  it.each([
    ['ppi-out-of-range', { ppi: 2401 }],
    ['ppi-out-of-range', { ppi: 0 }],
    ['ppi-out-of-range', { ppi: Number.NaN }],
    ['blank-has-no-safe-area', { safeMm: 101 }],
    ['bad-length', { widthMm: 0 }],
    ['bad-length', { heightMm: Number.POSITIVE_INFINITY }],
  ] as const)('%s for %j', (code, request) =>
    expect(codeOf(() => place({ blank: tile, ...request }))).toBe(code),
  );
});

describe('inside, for any art on any shape', () => {
  const shapes: BlankRecord['outline'][] = [
    { shape: 'rect', widthMm: 90, heightMm: 60 },
    { shape: 'circle', widthMm: 80, heightMm: 80 },
    { shape: 'ellipse', widthMm: 56, heightMm: 78 },
    { shape: 'stadium', widthMm: 50.8, heightMm: 28.6 },
    { shape: 'rounded-rect', widthMm: 90, heightMm: 60, cornerRadiusMm: 12 },
    {
      shape: 'polygon',
      widthMm: 60,
      heightMm: 60,
      pointsMm: [
        [30, 0],
        [60, 60],
        [0, 60],
      ],
    },
  ];

  it('every visible pixel lies within the safe line, and one of them touches it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: shapes.length - 1 }),
        fc.integer({ min: 1, max: 1e6 }),
        fc.constantFrom(0, 90, 180, 270),
        (which, seed, turn) => {
          const next = seededNumbers(seed);
          const discs = Array.from(
            { length: 3 },
            () => [next() * 30 + 5, next() * 30 + 5, next() * 5 + 0.6] as const,
          );
          const raster = paintRaster(40, 40, (x, y) =>
            discs.some(([cx, cy, r]) => Math.hypot(x - cx, y - cy) < r) ? GREEN : CLEAR,
          );
          const { contentBoxPx, hullPx } = surveyRaster(raster);
          if (contentBoxPx === null) return;
          const request: JobRequest = {
            blank: {
              id: 'any',
              name: 'any',
              outline: shapes[which]!,
              surface: 'first',
              safeMm: 3,
              bleedMm: 2,
            },
            turn: turn as 0 | 90 | 180 | 270,
          };
          const blank = resolveBlank(request, defaultFamily);
          const frame = frameOf(placeArt(request, blank, contentBoxPx, hullPx));
          let least = Infinity;
          for (let y = 0; y < 40; y += 1)
            for (let x = 0; x < 40; x += 1) {
              if (raster.data[(y * 40 + x) * 4 + 3] === 0) continue;
              for (const [dx, dy] of [
                [0, 0],
                [1, 0],
                [0, 1],
                [1, 1],
              ] as const) {
                const mm = frame.toMm({ x: x + dx, y: y + dy });
                least = Math.min(least, marginWithinSafe(blank, mm.x, mm.y));
              }
            }
          // Nothing beyond the line but for the last bits of doubles, and something on it.
          expect(least).toBeGreaterThan(-1e-9);
          expect(least).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 150, seed: 31 },
    );
  });
});
